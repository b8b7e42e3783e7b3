using System.Collections.Immutable;
using System.Globalization;

namespace Handhold.Diagnostics;

/// <summary>How well a curve fits its frames, and what it hangs on.</summary>
public sealed class CurveChecks
{
    private const double Noticeable = 0.05; // stops: less is printed as none

    internal CurveChecks(KeeperCurve curve, double rate, ImmutableArray<SpeedCheck> speeds, ImmutableArray<CellCheck> cells) =>
        (Curve, Rate, Speeds, Cells) = (curve, rate, speeds, cells);

    /// <summary>The curve.</summary>
    public KeeperCurve Curve { get; }

    /// <summary>The keeper rate whose exposure <see cref="CellCheck.Influence"/> is about, 0 to 1.</summary>
    public double Rate { get; }

    /// <summary>Speed by speed, fastest first.</summary>
    public ImmutableArray<SpeedCheck> Speeds { get; }

    /// <summary>Bursts, and frames of equal conditions that share none, in the order of the curve's cells.</summary>
    public ImmutableArray<CellCheck> Cells { get; }

    /// <summary>The speed farthest from what the others expect, in points; null where nothing is expected.</summary>
    public SpeedCheck? LargestGap => Speeds.Where(s => s.GapInPoints is not null).MaxBy(s => Math.Abs(s.GapInPoints!.Value));

    /// <summary>What the asked exposure hangs on most; null where no cell can be left out.</summary>
    public CellCheck? MostInfluential => Cells.Where(c => c.Influence is not null).MaxBy(c => Math.Abs(c.Influence!.Value.Value));

    /// <summary>Sum of the log predictive densities of the cells: of two links or ceilings for the same frames the larger one predicts better. Null where a cell has none.</summary>
    /// <remarks>Source: Vehtari, Gelman and Gabry (2017), Statistics and Computing 27, 1413-1432.</remarks>
    public double? LogPredictiveDensity =>
        Cells.All(c => c.LogPredictiveDensity is not null) ? Cells.Sum(c => c.LogPredictiveDensity) : null;

    /// <summary>Standard error of <see cref="LogPredictiveDensity"/> over cells; null with it.</summary>
    public double? LogPredictiveError
    {
        get
        {
            if (LogPredictiveDensity is not { } sum)
                return null;
            var mean = sum / Cells.Length;
            return Math.Sqrt(Cells.Sum(c => Math.Pow(c.LogPredictiveDensity!.Value - mean, 2)));
        }
    }

    /// <summary>The size of the misfit before its chance, and what the curve hangs on.</summary>
    public string Sentence => string.Join(" ", new[] { Gap(), Leaning() }.OfType<string>());

    /// <inheritdoc cref="Sentence" />
    public override string ToString() => Sentence;

    private string? Gap() =>
        LargestGap is { GapInPoints: { } gap, Chance: { } chance } worst
            ? string.Create(
                CultureInfo.InvariantCulture,
                $"Farthest from what the other speeds expect: {worst.Seen.Exposure}, {Math.Abs(gap):0} points {(gap < 0 ? "below" : "above")} ({worst.Seen.Keepers} of {worst.Seen.Frames} keepers, {100 * worst.Expected:0} % expected; a count as far out has a chance of {Chance(chance)})."
            )
            : null;

    private string? Leaning() =>
        MostInfluential is not { Influence: { } influence } most ? null
        : Math.Abs(influence.Value) < Noticeable
            ? string.Create(
                CultureInfo.InvariantCulture,
                $"Leaving out any one cell moves {Asked} for {100 * Rate:0.#} % by less than 0.1 stops."
            )
        : string.Create(
            CultureInfo.InvariantCulture,
            $"It hangs most on {most.Keepers} of {most.Frames} at {Listing.And(most.Cells.Select(c => c.Exposure).Distinct())}{Whose(most)}: without them {Asked} for {100 * Rate:0.#} % would be {Math.Abs(influence.Value):0.0} stops {(influence.Value < 0 ? "faster" : "slower")}."
        );

    private string Asked => IsTypical ? "the typical exposure" : "the exposure";

    /// <summary>Whether levels vary, and the exposure is that of a typical one.</summary>
    internal bool IsTypical { get; init; }

    private string Whose(CellCheck cell) =>
        Curve.Model.Varies.IsEmpty ? "" : $" ({string.Join(", ", Labels(cell).Select(l => $"{l.Column} {l.Label}"))})";

    /// <summary>The labels of a cell in the columns that vary, and of the session.</summary>
    internal IEnumerable<(string Column, string Label)> Labels(CellCheck cell) =>
        Curve
            .Model.Varies.SelectMany(v => v.Path)
            .Append("session")
            .Distinct()
            .Where(column => cell.Cells[0].Conditions[column] is not null)
            .Select(column => (column, cell.Cells[0].Conditions[column]!));

    private static string Chance(double chance) =>
        chance < 0.001 ? "under 0.1 %" : (100 * chance).ToString(chance < 0.1 ? "0.0" : "0", CultureInfo.InvariantCulture) + " %";
}
