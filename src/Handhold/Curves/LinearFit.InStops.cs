using System.Collections.Immutable;
using Handhold.Curves;
using Handhold.Solvers;

namespace Handhold;

public sealed partial class LinearFit
{
    /// <summary>Terms that change the steepness, so that what they cost depends on the rate.</summary>
    internal ImmutableArray<string> ChangingSteepness =>
        [
            .. Likelihood
                .Layout.Terms.Where(t => t.Columns.Any(c => Partners(Likelihood.Layout.Columns.IndexOf(c)).Any(p => p.Partner == Slope)))
                .Select(t => t.Name),
        ];

    private int Slope => Likelihood.Layout.HasExposure ? 1 : -1;

    private (int Product, int Partner)[] Partners(int column) => [.. Likelihood.Layout.PartnersOf(column)];

    private ImmutableArray<TermInStops> FindInStops()
    {
        if (!Likelihood.Layout.HasExposure)
            return [];
        var found = ImmutableArray.CreateBuilder<TermInStops>();
        foreach (var column in Likelihood.Layout.Terms.SelectMany(t => t.Columns).Select(c => Likelihood.Layout.Columns.IndexOf(c)))
        {
            var partners = Partners(column);
            if (partners.Any(p => p.Partner == Slope))
                continue;
            foreach (var at in Extremes(partners))
                found.Add(InStopsAt(column, at));
        }

        return found.ToImmutable();
    }

    /// <summary>The lowest and the highest of what the partners are in the data, all low and all high; one empty place without partners.</summary>
    private IEnumerable<(int Product, int Partner, double Value)[]> Extremes((int Product, int Partner)[] partners)
    {
        if (partners.Length == 0)
            return
            [
                [],
            ];
        return
        [
            [.. partners.Select(p => (p.Product, p.Partner, Seen(p.Partner).Min()))],
            [.. partners.Select(p => (p.Product, p.Partner, Seen(p.Partner).Max()))],
        ];
    }

    private IEnumerable<double> Seen(int column)
    {
        for (var row = 0; row < Likelihood.Problem.Rows; row++)
            yield return Likelihood.Problem.Design.Span[row * Columns + column];
    }

    /// <summary>Where a column stands, as users state it: the column of a magnification is log2(1 + magnification).</summary>
    internal static KeyValuePair<string, double> Stated(string column, double value) =>
        KeyValuePair.Create(column, column == "magnification" ? Math.Round(Math.Pow(2, value) - 1, 12) : value);

    /// <summary>The t with term · b + t slope · b = 0: the term's shift of the line, undone by t stops.</summary>
    private TermInStops InStopsAt(int column, (int Product, int Partner, double Value)[] at)
    {
        var shift = Unit(column).ToArray();
        foreach (var (product, _, value) in at)
            shift[product] = value;
        ImmutableArray<double> still = [.. shift];
        // The slope must not depend on other terms here: those that do are at their reference.
        var moving = Unit(Slope);
        var set = ProfileSet.Of(Likelihood.ProfileAt(Level), still, moving, 0, Level);
        Stops? stops = Likelihood.Dot(still) is { } height && Likelihood.Dot(moving) is { } slope and not 0 ? new(-height / slope) : null;
        ImmutableArray<KeyValuePair<string, double>> stated = [.. at.Select(p => Stated(Likelihood.Layout.Columns[p.Partner], p.Value))];
        var name = Likelihood.Layout.Columns[column];
        var reference = Likelihood.Layout.Terms.First(t => t.Columns.Contains(name)).Levels.FirstOrDefault();
        return new(
            name,
            stated,
            stops,
            set.Outside ? null : set.Lower,
            set.Outside ? null : set.Upper,
            EffectWords.Of(name, reference, stated, isLinear: true)
        );
    }
}
