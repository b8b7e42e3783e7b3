using System.Collections.Immutable;
using Handhold.Kernels;
using Handhold.Solvers;

namespace Handhold.Curves;

/// <summary>Sets of the t at which a line crosses a height: exposures for a rate, or stops between two lines.</summary>
internal static class LineSet
{
    internal const double Farthest = 128;

    internal static ExposureSet From(ProfileSet set) => Make(set.Lower, set.Upper, set.Outside, IntervalMethod.Profile);

    internal static ExposureSet NotReachable(IntervalMethod method) => new(ExposureSetKind.NotReachable, [], Word(method));

    /// <summary>From estimates and covariance alone: (still + t moving) · b = height.</summary>
    /// <remarks>
    /// With A = still·b - height, B = moving·b and their variances, Fieller's set is (A + tB)² ≤ z² var(A + tB); delta takes -A/B ± z sd(A + tB)/|B|.
    /// Sources: Fieller (1954), Journal of the Royal Statistical Society B 16, 175-185; Cox (1990), Journal of Quality Technology 22, for delta.
    /// </remarks>
    internal static ExposureSet FromCovariance(
        CurveLikelihood likelihood,
        ImmutableArray<double> still,
        ImmutableArray<double> moving,
        double height,
        double level,
        IntervalMethod method
    )
    {
        if (likelihood.Estimate is not { } estimate || likelihood.Dot(moving) is not { } b || likelihood.Dot(still) is not { } line)
            return new(ExposureSetKind.Everything, [new(null, null)], Word(method));
        var a = line - height;
        var (vaa, vab, vbb) = (Variance(estimate, still, still), Variance(estimate, still, moving), Variance(estimate, moving, moving));
        if (method != IntervalMethod.Delta)
            return Fieller(a, b, (vaa, vab, vbb), level);
        var t = -a / b;
        var half = Normal.Quantile((1 + level) / 2) * Math.Sqrt(vaa + t * (2 * vab + t * vbb)) / Math.Abs(b);
        return Make(t - half, t + half, false, method);
    }

    /// <summary>The t at which a + t b is not told from zero, by variances and covariance of a and b.</summary>
    internal static ExposureSet Fieller(double a, double b, (double OfA, double Both, double OfB) variance, double level)
    {
        const IntervalMethod method = IntervalMethod.Fieller;
        var z = Normal.Quantile((1 + level) / 2);
        var (square, cross, rest) = (b * b - z * z * variance.OfB, a * b - z * z * variance.Both, a * a - z * z * variance.OfA);
        var discriminant = cross * cross - square * rest;
        if (square == 0 || (square < 0 && discriminant <= 0))
            return Make(null, null, false, method);
        var root = Math.Sqrt(Math.Max(0, discriminant));
        var far = -(cross + (cross >= 0 ? root : -root));
        var (one, other) = (far / square, far == 0 ? 0 : rest / far);
        var (low, high) = (Math.Min(one, other), Math.Max(one, other));
        return square > 0 ? Make(low, high, false, method) : Make(high, low, true, method);
    }

    /// <summary>By walking from the estimate until the signed root passes the normal quantile; for curves whose ceiling or floor adapts.</summary>
    internal static ExposureSet ByRoots(double? estimate, Func<double, double> signedRoot, double level, IntervalMethod method)
    {
        if (estimate is not { } centre)
            return NotReachable(method);
        var z = Normal.Quantile((1 + level) / 2);
        return Make(End(-1), End(1), false, method);

        double? End(int side)
        {
            var (inside, reach) = (0.0, 0.25);
            while (Math.Abs(signedRoot(centre + side * reach)) < z)
            {
                (inside, reach) = (reach, 2 * reach);
                if (reach > Farthest)
                    return null;
            }

            var outside = reach;
            while (outside - inside > 1e-9)
            {
                var middle = (inside + outside) / 2;
                if (Math.Abs(signedRoot(centre + side * middle)) < z)
                    inside = middle;
                else
                    outside = middle;
            }

            return centre + side * (inside + outside) / 2;
        }
    }

    private static ExposureSet Make(double? lower, double? upper, bool outside, IntervalMethod method) =>
        (Near(lower), Near(upper), outside) switch
        {
            (null, null, _) => new(ExposureSetKind.Everything, [new(null, null)], Word(method)),
            (null, _, true) => new(ExposureSetKind.AtMost, [new(null, upper)], Word(method)),
            (_, null, true) => new(ExposureSetKind.AtLeast, [new(lower, null)], Word(method)),
            (_, _, true) => new(ExposureSetKind.TwoPieces, [new(null, upper), new(lower, null)], Word(method)),
            (null, _, _) => new(ExposureSetKind.AtMost, [new(null, upper)], Word(method)),
            (_, null, _) => new(ExposureSetKind.AtLeast, [new(lower, null)], Word(method)),
            _ => new(ExposureSetKind.Bounded, [new(lower, upper)], Word(method)),
        };

    /// <summary>Beyond 2^±1000 s there are no exposures.</summary>
    private static double? Near(double? end) => end is { } at && Math.Abs(at) < 1000 ? end : null;

    private static double Variance(BinomialEstimate estimate, ImmutableArray<double> one, ImmutableArray<double> other)
    {
        var (sum, columns) = (0.0, one.Length);
        for (var i = 0; i < columns; i++)
        for (var j = 0; j < columns; j++)
            sum += one[i] * estimate.Covariance[i * columns + j] * other[j];
        return sum;
    }

    private static string Word(IntervalMethod method) =>
        method switch
        {
            IntervalMethod.Fieller => "fieller",
            IntervalMethod.Delta => "delta",
            _ => "profile",
        };
}
