namespace Handhold.Diagnostics;

/// <summary>Checks of fitted curves.</summary>
public static class DiagnosticsExtensions
{
    /// <summary>How well a curve fits its frames, and what the exposure for a rate hangs on.</summary>
    /// <remarks>
    /// What the other speeds expect: the curve is fitted again without each speed. Cells: a posterior is stood for by weighted points, and a cell is left out
    /// by dividing each point's weight by the cell's likelihood there; the other estimators are fitted again without the cell. Where levels
    /// vary, the points hold draws of the levels too, and the exposure is that of the levels that the conditions name, or of a typical one; a likelihood's cells are not left out.
    /// </remarks>
    /// <param name="curve">The curve.</param>
    /// <param name="rate">Keeper rate of the exposure whose dependence on each cell is found, between 0 and 1.</param>
    /// <param name="conditions">Under which conditions; the curve's <see cref="KeeperCurve.ReferenceConditions"/> where not given.</param>
    /// <param name="seed">Seed of the residuals' chance.</param>
    /// <exception cref="ArgumentOutOfRangeException">The rate is not between 0 and 1.</exception>
    public static CurveChecks Check(this KeeperCurve curve, double rate = 0.5, Conditions? conditions = null, int seed = 1)
    {
        ArgumentNullException.ThrowIfNull(curve);
        if (!(rate is > 0 and < 1))
            throw new ArgumentOutOfRangeException(nameof(rate), rate, "A keeper rate lies between 0 and 1. Give, say, 0.8.");
        var under = (conditions ?? Conditions.None).Or(curve.ReferenceConditions);
        var (fitted, cells) = curve.Linear switch
        {
            { Likelihood.Grouped: { } grouped } => GroupedChecks.Of(curve, grouped),
            { } linear => LinearChecks.Of(curve, linear, rate, under, seed),
            null when curve.Varying is { } varying => VaryingChecks.Of(curve, varying, rate, conditions ?? Conditions.None, under, seed),
            null => PosteriorChecks.Of(curve, rate, under, seed),
        };
        return new(curve, rate, [.. curve.Data.Speeds.Select((s, i) => Speed(curve, s, fitted[i]))], cells)
        {
            IsTypical = curve.Varying?.LevelsOf(conditions ?? Conditions.None).IsEmpty == true,
        };
    }

    private static SpeedCheck Speed(KeeperCurve curve, SpeedCount seen, double? fitted)
    {
        var expected = curve.Expected.Value.FirstOrDefault(e => e.Seen.Exposure == seen.Exposure);
        return new(
            seen,
            BinomialInterval.ClopperPearson(seen.Keepers, seen.Frames, curve.Model.Level),
            fitted,
            expected?.Rate,
            expected?.Chance
        );
    }
}
