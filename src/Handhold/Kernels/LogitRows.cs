using System.Runtime.Intrinsics;

namespace Handhold.Kernels;

/// <summary>Counts on the logistic curve, eight rows at a time: the same bits whatever width the processor has.</summary>
internal static class LogitRows
{
    /// <summary>Σ k log μ + r log(1 - μ) of rows at their predictors, with the derivatives of each. So many rows as divide by eight: those without frames fill up.</summary>
    /// <param name="kept">k.</param>
    /// <param name="lost">r.</param>
    /// <param name="score">The predictors before, the first derivatives k(1 - μ) - rμ after.</param>
    /// <param name="weight">Minus the second derivatives, (k + r) μ(1 - μ).</param>
    /// <param name="change">The derivatives of the weights, (k + r) μ(1 - μ)(1 - 2μ).</param>
    internal static double Weigh(
        ReadOnlySpan<double> kept,
        ReadOnlySpan<double> lost,
        Span<double> score,
        Span<double> weight,
        Span<double> change
    )
    {
        var sum = Vector512<double>.Zero;
        for (var i = 0; i < score.Length; i += Vector512<double>.Count)
            sum += Eight(kept[i..], lost[i..], score[i..], weight[i..], change[i..]);
        return Vector512.Sum(sum);
    }

    private static Vector512<double> Eight(
        ReadOnlySpan<double> kept,
        ReadOnlySpan<double> lost,
        Span<double> score,
        Span<double> weight,
        Span<double> change
    )
    {
        var (k, r, eta) = (Vector512.Create(kept), Vector512.Create(lost), Vector512.Create<double>(score));
        var e = Vector512.Exp(-Vector512.Abs(eta));
        var u = Vector512<double>.One + e;
        var (big, small) = (Vector512<double>.One / u, e / u);
        var rises = Vector512.GreaterThanOrEqual(eta, Vector512<double>.Zero);
        var (keep, miss) = (Vector512.ConditionalSelect(rises, big, small), Vector512.ConditionalSelect(rises, small, big));
        var spread = (k + r) * (keep * miss);
        (k * miss - r * keep).CopyTo(score);
        spread.CopyTo(weight);
        (spread * (miss - keep)).CopyTo(change);
        // log(1 + e) as in Elementary.Log1p
        var log = Vector512.ConditionalSelect(
            Vector512.Equals(u, Vector512<double>.One),
            e,
            Vector512.Log(u) * (e / (u - Vector512<double>.One))
        );
        var (low, high) = (Vector512.Min(eta, Vector512<double>.Zero), Vector512.Max(eta, Vector512<double>.Zero));
        return k * (low - log) - r * (high + log);
    }
}
