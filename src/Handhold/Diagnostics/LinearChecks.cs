using System.Collections.Immutable;
using Handhold.Kernels;
using Handhold.Randomness;
using Handhold.Solvers;

namespace Handhold.Diagnostics;

/// <summary>Cells left out of a likelihood or bias-reduced fit by fitting again.</summary>
internal static class LinearChecks
{
    internal static (double[] Fitted, ImmutableArray<CellCheck> Cells) Of(
        KeeperCurve curve,
        LinearFit linear,
        double rate,
        Conditions conditions,
        int seed
    )
    {
        var (likelihood, problem) = (linear.Likelihood, linear.Likelihood.Problem);
        var (columns, chance) = (problem.Columns.Length, Seed.From(seed).Stream(1));
        var (still, moving) = likelihood.Layout.Line(conditions.Or(linear.SharedConditions));
        var before = likelihood.Estimate is { } all ? Exposure(all) : null;
        var cells = curve.Data.Cells.GroupBy(RowOf).ToDictionary(g => g.Key, g => g.ToImmutableArray());
        return ([.. curve.Data.Speeds.Select(Fitted)], [.. Enumerable.Range(0, problem.Rows).Select(Check)]);

        ReadOnlySpan<double> Row(int row) => problem.Design.Span.Slice(row * columns, columns);

        int RowOf(FrameCell cell)
        {
            var (at0, at1) = likelihood.Layout.Line(cell.Conditions);
            var x = cell.Exposure.Log2Seconds;
            return Enumerable
                .Range(0, problem.Rows)
                .MinBy(row => Enumerable.Range(0, columns).Sum(j => Math.Abs(Row(row)[j] - at0[j] - x * at1[j])));
        }

        double Fitted(SpeedCount speed) =>
            cells
                .SelectMany(c => c.Value.Where(f => f.Exposure == speed.Exposure).Select(f => (Row: c.Key, f.Frames)))
                .Sum(c => c.Frames * (likelihood.Value([.. Row(c.Row)]) is { } eta ? likelihood.RateOf(eta) : double.NaN)) / speed.Frames;

        double? Exposure(BinomialEstimate estimate)
        {
            var share = (rate - estimate.Floor) / (estimate.Ceiling - estimate.Floor);
            var (height, slope) = (Dot(still, estimate), Dot(moving, estimate));
            return share is > 0 and < 1 && slope != 0 ? (Links.Inverse(problem.Link, share) - height) / slope : null;
        }

        CellCheck Check(int row)
        {
            var (frames, keepers) = (problem.Frames.Span[row], problem.Keepers.Span[row]);
            if (likelihood.Without([row]) is not { } others)
                return new(cells[row]) { Leverage = Leverage(row) };
            var (keep, miss) = Chances(others, row).Rates;
            var (fewer, exactly, _) = CountLaw.Binomial(frames, keep, miss).Around(keepers);
            return new(cells[row])
            {
                Residual = Normal.Quantile(Math.Clamp(fewer + chance.Uniform() * exactly, 1e-300, 1 - 1e-16)),
                Leverage = Leverage(row),
                Influence = before is { } all && Exposure(others) is { } rest ? new Stops(rest - all) : null,
                LogPredictiveDensity = Log(keepers, keep) + Log(frames - keepers, miss),
            };
        }

        double Leverage(int row)
        {
            if (likelihood.Estimate is not { } estimate)
                return 0;
            var ((keep, miss), rise) = Chances(estimate, row);
            var error = estimate.StandardError([.. Row(row)]);
            return problem.Frames.Span[row] * rise * rise / (keep * miss) * error * error;
        }

        ((double Keep, double Miss) Rates, double Rise) Chances(BinomialEstimate estimate, int row)
        {
            var point = Links.At(problem.Link, Dot([.. Row(row)], estimate));
            var span = estimate.Ceiling - estimate.Floor;
            return ((estimate.Floor + span * point.F, 1 - estimate.Ceiling + span * point.G), span * point.Up * point.F);
        }
    }

    private static double Log(int count, double chance) => count == 0 ? 0 : count * Math.Log(chance);

    private static double Dot(ImmutableArray<double> contrast, BinomialEstimate estimate) =>
        contrast.Zip(estimate.Coefficients, (weight, coefficient) => weight * coefficient).Sum();
}
