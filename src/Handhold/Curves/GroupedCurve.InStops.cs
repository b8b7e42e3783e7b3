using System.Collections.Immutable;
using Handhold.Models;

namespace Handhold.Curves;

internal sealed partial class GroupedCurve
{
    /// <summary>What a column costs or buys at a level: the t with a + t b = 0, a its coefficient with the level's effect, b the level's slope, by Fieller's method.</summary>
    /// <returns>Null where there is no slope, or the column changes it.</returns>
    private TermInStops? InStops(int column, ImmutableArray<(int Part, int Level)> levels, Conditions reference, double level)
    {
        if (Shift(column, reference) is not ({ } still, var at))
            return null;
        var moving = layout.Design.Line(reference).Moving;
        var (a, b) = (fit.Predictor(still.AsSpan(), levels.AsSpan()), fit.Predictor(moving.AsSpan(), levels.AsSpan()));
        var joint = fit.Modes.Covariance([(still, levels), (moving, levels)]);
        var set = LineSet.Fieller(a, b, (joint[0], joint[1], joint[3]), level);
        var (lower, upper) = set.Pieces is [var piece] ? (piece.Lower, piece.Upper) : (null, null);
        var name = layout.Design.Columns[column];
        var term = layout.Design.Terms.First(t => t.Columns.Contains(name));
        return new(
            name,
            at,
            b == 0 ? null : new Stops(-a / b),
            lower,
            upper,
            EffectWords.Of(name, term.Levels.FirstOrDefault(), at, isLinear: true)
        );
    }

    /// <summary>The sd between levels of what the one column of a term costs or buys, over the slope of the typical one.</summary>
    private double? TermSpreadInStops(ImmutableArray<int> parts, Conditions reference)
    {
        if (parts is not [var part] || Shift(layout.Parts[part].Columns[0], reference) is not ({ }, _))
            return null;
        var slope = fit.Predictor(layout.Design.Line(reference).Moving.AsSpan(), []);
        return slope == 0 ? null : fit.SpreadOf(part, 0).Spread / Math.Abs(slope);
    }

    // What one more of a column adds to a row under some conditions, and where the columns stand that it is multiplied with.
    private (ImmutableArray<double>? Row, ImmutableArray<KeyValuePair<string, double>> At) Shift(int column, Conditions reference)
    {
        var partners = layout.Design.PartnersOf(column).ToArray();
        var exposure = layout.Design.Columns.IndexOf(DesignLayout.Exposure);
        if (exposure < 0 || partners.Any(p => p.Partner == exposure))
            return (null, []);
        var here = layout.Design.Line(reference).Still;
        var row = new double[here.Length];
        row[column] = 1;
        foreach (var (product, partner) in partners)
            row[product] = here[partner];
        return ([.. row], [.. partners.Select(p => LinearFit.Stated(layout.Design.Columns[p.Partner], here[p.Partner]))]);
    }
}
