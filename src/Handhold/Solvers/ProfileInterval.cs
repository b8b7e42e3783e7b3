using System.Collections.Immutable;
using Handhold.Kernels;

namespace Handhold.Solvers;

/// <summary>The values of a contrast that a likelihood-ratio test at the level does not reject.</summary>
/// <remarks>
/// contrast · b = v is inside when twice the (penalised) log-likelihood lost by holding it is at most the χ² quantile with one degree of freedom; the penalty
/// is always the full design's.
/// </remarks>
public sealed class ProfileInterval
{
    // Strides away from the estimate before a side counts as unbounded; each at most four times as long as the last.
    private const int Strides = 40;

    internal ProfileInterval(double? lower, double? upper, double level) => (Lower, Upper, Level) = (lower, upper, level);

    /// <summary>Lower end, exact to 1e-10; absent when unbounded.</summary>
    public double? Lower { get; }

    /// <summary>Upper end, exact to 1e-10; absent when unbounded.</summary>
    public double? Upper { get; }

    /// <summary>Confidence, such as 0.95.</summary>
    public double Level { get; }

    /// <summary>The interval of a contrast; of one coefficient with a single 1 among the weights.</summary>
    /// <param name="problem">The problem; where it separates, the sides that the data bound are still found.</param>
    /// <param name="estimator">What is maximised.</param>
    /// <param name="contrast">One weight a column, not all zero.</param>
    /// <param name="level">Confidence, above 0 and below 1.</param>
    /// <exception cref="SolverException">A solver stopped short.</exception>
    public static ProfileInterval Of(
        BinomialProblem problem,
        BinomialEstimator estimator,
        ImmutableArray<double> contrast,
        double level = 0.95
    )
    {
        ArgumentNullException.ThrowIfNull(problem);
        return Of(new Profile(problem, estimator, level), contrast, level);
    }

    /// <summary>The interval of a contrast by what a profile loses.</summary>
    internal static ProfileInterval Of(IProfile profile, ImmutableArray<double> contrast, double level)
    {
        ProfileInterval interval;
        do
        {
            profile.Moved = false;
            interval = Once(profile, contrast, level);
        } while (profile.Moved);
        return interval;
    }

    private static ProfileInterval Once(IProfile profile, ImmutableArray<double> contrast, double level)
    {
        var inside = Orthonormal.Dot(contrast.AsSpan(), profile.Estimate.Coefficients.AsSpan());
        var (down, up) = (false, false);
        if (profile.Cone is { } cone)
        {
            (down, up) = (cone.Reaches(contrast.AsSpan(), -1) ?? false, cone.Reaches(contrast.AsSpan(), 1) ?? false);
            inside = down || up ? inside : profile.Limit(contrast);
        }
        var unit = profile.Step(contrast);
        return new(down ? null : End(-1), up ? null : End(1), level);

        double Excess(double way) => profile.Excess(contrast, inside + way * unit);

        // Away from the estimate until the loss is too large; then the root between.
        double? End(int sign)
        {
            var (from, excess) = (0.0, Excess(0));
            for (double stride = 1; excess > 0 && stride < 1e12; stride *= 2)
                excess = Excess(from = -sign * stride);
            var step = 1.0;
            for (var tries = 0; tries < Strides; tries++)
            {
                var to = from + sign * step;
                var there = Excess(to);
                if (there > 0)
                    return inside + unit * Root.Of(Excess, (from, excess), (to, there), 1e-12);
                step *= there > excess ? Math.Clamp(-1.1 * there / (there - excess), 0.2, 4) : 4;
                (from, excess) = (to, there);
            }
            return null;
        }
    }
}
