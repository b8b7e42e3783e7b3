using Handhold.Diagnostics;

namespace Handhold.Tests.Serialization;

/// <summary>What curves with a term <c>grip</c> of two levels answer, in numbers.</summary>
internal static class TermNumbers
{
    internal static double[] Of(FittedCurves fit) => [.. fit.SelectMany(Of)];

    private static IEnumerable<double> Of(KeeperCurve curve)
    {
        var (free, braced) = (Conditions.None.With("grip", "free"), Conditions.None.With("grip", "braced"));
        AnswerOptions options = new() { Conditions = braced, BeyondTested = true };
        var at = ShutterSpeed.OneOver(60);
        foreach (var p in curve.Parameters)
        foreach (var number in new[] { p.Median, p.Mean, p.StandardDeviation, p.Interval.Lower, p.Interval.Upper })
            yield return number;
        foreach (var e in curve.InStops)
        foreach (var number in new[] { e.Stops?.Value, e.Lower, e.Upper })
            yield return number ?? double.NaN;
        var (rate, difference) = (curve.RateAt(at, options).Rate!, curve.SlowerUnder(braced, free, 0.7));
        var frames = curve.FramesNeeded(at, 2, 0.9, options);
        var checks = curve.Check(conditions: braced);
        double?[] answers =
        [
            curve.LogLikelihood,
            curve.Deviance,
            rate.Median,
            rate.Mean,
            rate.Interval.Lower,
            rate.Interval.Upper,
            curve.ExposureFor(0.7, options).Exposure?.Log2Seconds,
            curve.Slowest(0.5, 0.8, options).Shutter?.Log2Seconds,
            difference.Stops?.Value,
            difference.Interval?.Lower,
            difference.ProbabilityBetter,
            frames.Frames,
            frames.Assurance,
            checks.LogPredictiveDensity,
            .. checks.Cells.Select(c => c.Influence?.Value),
        ];
        foreach (var answer in answers)
            yield return answer ?? double.NaN;
    }
}
