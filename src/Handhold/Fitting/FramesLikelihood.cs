using Handhold.Kernels;

namespace Handhold.Fitting;

/// <summary>Log-probabilities of keeper and reject along a grid of half points.</summary>
internal static class FramesLikelihood
{
    /// <summary>log P and log(1 - P) at half points start + i step for one exposure, without cancellation in either.</summary>
    /// <remarks>P = floor + (ceiling - floor) L(u), u = b (half point - x), L the logistic function.</remarks>
    internal static void Fill(Shape shape, double exposure, double start, double step, Span<double> logKeeper, Span<double> logReject)
    {
        var (b, ceiling, floor) = (shape.Steepness, shape.Ceiling, shape.Floor);
        var plain = ceiling == 1 && floor == 0;
        var (span, loss) = (ceiling - floor, 1 - ceiling);
        for (var i = 0; i < logKeeper.Length; i++)
        {
            var u = b * (start + i * step - exposure);
            var e = Math.Exp(-Math.Abs(u));
            if (plain)
            {
                var log = Elementary.Log1p(e);
                logKeeper[i] = Math.Min(u, 0) - log;
                logReject[i] = -Math.Max(u, 0) - log;
                continue;
            }

            var (mu, rest) = u >= 0 ? (1 / (1 + e), e / (1 + e)) : (e / (1 + e), 1 / (1 + e));
            logKeeper[i] = floor == 0 ? Math.Log(span) + Math.Min(u, 0) - Elementary.Log1p(e) : Math.Log(floor + span * mu);
            logReject[i] = loss == 0 ? Math.Log(span) - Math.Max(u, 0) - Elementary.Log1p(e) : Math.Log(loss + span * rest);
        }
    }

    /// <summary>Log-likelihood of counts at one half point.</summary>
    internal static double LogLikelihood(
        Shape shape,
        double halfPoint,
        ReadOnlySpan<double> exposures,
        ReadOnlySpan<double> frames,
        ReadOnlySpan<double> keepers
    )
    {
        var sum = 0.0;
        Span<double> logKeeper = stackalloc double[1];
        Span<double> logReject = stackalloc double[1];
        for (var i = 0; i < exposures.Length; i++)
        {
            Fill(shape, exposures[i], halfPoint, 0, logKeeper, logReject);
            if (keepers[i] > 0)
                sum += keepers[i] * logKeeper[0];
            if (frames[i] > keepers[i])
                sum += (frames[i] - keepers[i]) * logReject[0];
        }

        return sum;
    }
}
