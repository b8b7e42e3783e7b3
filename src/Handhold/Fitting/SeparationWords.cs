using System.Globalization;
using Handhold.Solvers;

namespace Handhold.Fitting;

/// <summary>What to say where keepers and rejects separate, and what the data say all the same.</summary>
internal static class SeparationWords
{
    internal static Status? Of(CurveData data, LinearFit linear)
    {
        var separation = linear.Likelihood.Separation;
        var penalised = linear.Likelihood.Estimator == BinomialEstimator.BiasReduced;
        return separation.Kind switch
        {
            SeparationKind.AllKeepers => new(
                StatusCode.AllKeepers,
                $"Every frame was a keeper down to {data.Slowest}: the data say only that the limit is slower. {Estimate(linear, penalised)} Test slower speeds."
            ),
            SeparationKind.NoKeepers => new(
                StatusCode.NoKeepers,
                $"No frame was a keeper, even at {data.Fastest}: the data say only that the limit is faster. {Estimate(linear, penalised)} Test faster speeds, and check focus and criterion."
            ),
            SeparationKind.Complete => new(StatusCode.Separated, $"{Where(data, linear)} {Estimate(linear, penalised)}"),
            SeparationKind.Quasi => new(StatusCode.QuasiSeparated, $"{Where(data, linear)} {Estimate(linear, penalised)}"),
            SeparationKind.Unknown => new(
                StatusCode.SeparationUnknown,
                "Whether keepers and rejects separate could not be decided: a coefficient may have no finite estimate. Bias-reduced or posterior estimates are finite either way."
            ),
            _ => null,
        };
    }

    private static string Where(CurveData data, LinearFit linear)
    {
        if (linear.Likelihood.Layout.Terms.IsEmpty && Gap(data) is { } gap)
            return gap;
        var alike = linear.Likelihood.Separation.Columns.Select(c => Alike(linear, c)).OfType<string>().ToArray();
        if (alike.Length > 0)
            return $"{string.Join(", and ", alike)}.";
        var columns = linear.Likelihood.Separation.Columns.Select(c => c.Name);
        return $"Some combination of {Listing.And(columns)} parts keepers from rejects at {string.Join(", ", Exposures(linear))}.";
    }

    /// <summary>A level whose frames are all of one kind.</summary>
    private static string? Alike(LinearFit linear, DivergentColumn column)
    {
        var (problem, seen) = (linear.Likelihood.Problem, (Frames: 0, Keepers: 0));
        for (var row = 0; row < problem.Rows; row++)
            if (problem.Design.Span[row * problem.Columns.Length + column.Index] == 1)
                seen = (seen.Frames + problem.Frames.Span[row], seen.Keepers + problem.Keepers.Span[row]);
        return column.Index == 0 || !column.Name.Contains('=', StringComparison.Ordinal) ? null
            : seen.Keepers == seen.Frames ? $"Every frame with {column.Name} was a keeper"
            : seen.Keepers == 0 ? $"No frame with {column.Name} was a keeper"
            : null;
    }

    /// <summary>For one falling or rising curve: the speeds on both sides.</summary>
    private static string? Gap(CurveData data)
    {
        var (slowestKeeper, fastestReject) = (
            data.Speeds.Last(s => s.Keepers > 0).Exposure,
            data.Speeds.First(s => s.Keepers < s.Frames).Exposure
        );
        if (slowestKeeper < fastestReject)
            return $"Every frame up to {slowestKeeper} was a keeper and every one from {fastestReject} on a reject: the limit lies between them.";
        if (slowestKeeper == fastestReject)
            return $"Keepers and rejects meet at {slowestKeeper} only: the limit is there.";
        var (slowestReject, fastestKeeper) = (
            data.Speeds.Last(s => s.Keepers < s.Frames).Exposure,
            data.Speeds.First(s => s.Keepers > 0).Exposure
        );
        return slowestReject <= fastestKeeper
            ? $"Every frame faster than {fastestKeeper} was a reject and every one slower than {slowestReject} a keeper, the wrong way round."
            : null;
    }

    private static IEnumerable<string> Exposures(LinearFit linear)
    {
        if (!linear.HasExposure)
            return ["the one speed tested"];
        var (problem, seen) = (linear.Likelihood.Problem, new SortedSet<double>());
        foreach (var row in linear.Likelihood.Separation.Rows)
            seen.Add(problem.Design.Span[row * problem.Columns.Length + 1]);
        return seen.Select(x => ShutterSpeed.FromLog2Seconds(x).ToString());
    }

    /// <summary>What the estimator makes of it, and the one side that the data do bound.</summary>
    private static string Estimate(LinearFit linear, bool penalised)
    {
        if (penalised)
            return "The estimates are finite because of the penalty; their intervals are wide for this reason.";
        var columns = linear.Likelihood.Separation.Columns;
        var none = $"The likelihood has no finite estimate of {Listing.And(columns.Select(c => c.Name))}.";
        var bounds = columns.Select(c => Bound(linear.Coefficients[c.Index])).OfType<string>().ToArray();
        return bounds.Length == 0 ? none : $"{none} With {Percent(linear.Level)} confidence {string.Join(", and ", bounds)}.";
    }

    private static string? Bound(Coefficient coefficient) =>
        (coefficient.Interval.Lower, coefficient.Interval.Upper) switch
        {
            (null, { } upper) => Text($"{coefficient.Name} is at most {upper:0.###}"),
            ({ } lower, null) => Text($"{coefficient.Name} is at least {lower:0.###}"),
            _ => null,
        };

    private static string Percent(double level) => Text($"{100 * level:0.##} %");

    private static string Text(FormattableString text) => text.ToString(CultureInfo.InvariantCulture);
}
