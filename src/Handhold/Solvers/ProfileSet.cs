using System.Collections.Immutable;

namespace Handhold.Solvers;

/// <summary>The t at which (fixed + t moving) · b = value is not rejected: where a curve crosses a height.</summary>
/// <remarks>
/// One interval, everything, everything but an interval, or half a line, as in Fieller's theorem. With <see cref="Outside"/> the set is t ≤ Upper or t ≥ Lower.
/// </remarks>
public sealed partial class ProfileSet
{
    internal ProfileSet(double? lower, double? upper, bool outside, double level) =>
        (Lower, Upper, Outside, Level) = (lower, upper, outside, level);

    /// <summary>Where the set begins; absent when it reaches down without bound.</summary>
    public double? Lower { get; }

    /// <summary>Where the set ends; absent when it reaches up without bound.</summary>
    public double? Upper { get; }

    /// <summary>Two pieces: everything up to <see cref="Upper"/>, which lies below, and everything from <see cref="Lower"/>.</summary>
    public bool Outside { get; }

    /// <summary>Confidence, such as 0.95.</summary>
    public double Level { get; }

    /// <summary>The set of t with (<paramref name="still"/> + t <paramref name="moving"/>) · b = <paramref name="value"/>.</summary>
    /// <param name="problem">The problem.</param>
    /// <param name="estimator">What is maximised.</param>
    /// <param name="still">The part of the contrast that stays, one weight a column: of a line's intercept, and the conditions asked for.</param>
    /// <param name="moving">The part that goes with t, one weight a column: of a line's slope.</param>
    /// <param name="value">The height on the link's scale: 0 for a half on the logit.</param>
    /// <param name="level">Confidence, above 0 and below 1.</param>
    /// <exception cref="SolverException">A solver stopped short.</exception>
    public static ProfileSet Of(
        BinomialProblem problem,
        BinomialEstimator estimator,
        ImmutableArray<double> still,
        ImmutableArray<double> moving,
        double value,
        double level = 0.95
    )
    {
        ArgumentNullException.ThrowIfNull(problem);
        return Of(new Profile(problem, estimator, level), still, moving, value, level);
    }

    /// <summary>The set of t by what a profile loses.</summary>
    internal static ProfileSet Of(IProfile profile, ImmutableArray<double> still, ImmutableArray<double> moving, double value, double level)
    {
        ProfileSet set;
        do
        {
            profile.Moved = false;
            var (lower, upper, outside) = new Search(profile, still, moving, value).Run();
            set = new(lower, upper, outside, level);
        } while (profile.Moved);
        return set;
    }
}
