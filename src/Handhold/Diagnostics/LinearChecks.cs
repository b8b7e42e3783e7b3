using System.Collections.Immutable;
using Handhold.Kernels;
using Handhold.Randomness;
using Handhold.Solvers;

namespace Handhold.Diagnostics;

/// <summary>Cells left out of a likelihood or bias-reduced fit by fitting again.</summary>
internal static class LinearChecks
{
    internal static (double?[] Fitted, ImmutableArray<CellCheck> Cells) Of(
        KeeperCurve curve,
        LinearFit linear,
        double rate,
        Conditions conditions,
        int seed
    )
    {
        var (likelihood, problem) = (linear.Likelihood, linear.Likelihood.Problem);
        var chance = Seed.From(seed).Stream(1);
        var (still, moving) = likelihood.Layout.Line(conditions.Or(linear.SharedConditions));
        var before = likelihood.Estimate is { } all ? Exposure(all) : null;
        var leverages = likelihood.Estimate is { } whole ? HatValues.Of(problem, whole) : null;
        var rows = Enumerable.Range(0, problem.Rows).Select(Row).ToArray();
        var cells = curve.Data.Cells.ToLookup(cell =>
        {
            var own = likelihood.Layout.Row(cell);
            return Array.FindIndex(rows, row => row.AsSpan().SequenceEqual(own));
        });
        return ([.. curve.Data.Speeds.Select(Fitted)], [.. Enumerable.Range(0, problem.Rows).Select(Check)]);

        ImmutableArray<double> Row(int row) => [.. problem.Design.Span.Slice(row * problem.Columns.Length, problem.Columns.Length)];

        double? Fitted(SpeedCount speed) =>
            cells
                .SelectMany(c => c.Where(f => f.Exposure == speed.Exposure).Select(f => (Row: c.Key, f.Frames)))
                .Sum(c => c.Frames * (likelihood.Value(rows[c.Row]) is { } eta ? likelihood.RateOf(eta) : double.NaN)) / speed.Frames
                is var mean
            && double.IsFinite(mean)
                ? mean
                : null;

        double? Exposure(BinomialEstimate estimate)
        {
            var share = (rate - estimate.Floor) / (estimate.Ceiling - estimate.Floor);
            var coefficients = estimate.Coefficients.AsSpan();
            var (height, slope) = (Orthonormal.Dot(still.AsSpan(), coefficients), Orthonormal.Dot(moving.AsSpan(), coefficients));
            return share is > 0 and < 1 && slope != 0 ? (Links.Inverse(problem.Link, share) - height) / slope : null;
        }

        CellCheck Check(int row)
        {
            var (frames, keepers, leverage) = (problem.Frames.Span[row], problem.Keepers.Span[row], leverages?[row]);
            if (likelihood.Without([row]) is not { } others)
                return new([.. cells[row]]) { Leverage = leverage };
            var expected = others.At(problem, row);
            var (fewer, exactly, _) = CountLaw.Binomial(frames, expected.Rate, expected.Miss).Around(keepers);
            return new([.. cells[row]])
            {
                Residual = CellCheck.RandomisedQuantile(fewer, exactly, chance),
                Leverage = leverage,
                Influence = before is { } all && Exposure(others) is { } rest ? new Stops(rest - all) : null,
                LogPredictiveDensity = expected.LogLikelihood(keepers, frames - keepers),
            };
        }
    }
}
