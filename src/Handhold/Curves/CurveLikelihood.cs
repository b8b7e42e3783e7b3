using System.Collections.Immutable;
using Handhold.Kernels;
using Handhold.Models;
using Handhold.Solvers;

namespace Handhold.Curves;

/// <summary>The likelihood, or penalised likelihood, of one curve's linear predictor: its maximum, and what is lost by holding a rate.</summary>
internal sealed class CurveLikelihood
{
    private readonly Lazy<LimitEstimate> _limit;
    private readonly Lazy<Separation> _separation;

    internal CurveLikelihood(
        DesignLayout layout,
        BinomialProblem problem,
        BinomialEstimator estimator,
        Lazy<Separation> separation,
        ClusteredFit? shared = null,
        GroupedCurve? grouped = null
    )
    {
        (Layout, Problem, Estimator, _separation, Shared, Grouped) = (layout, problem, estimator, separation, shared, grouped);
        if (grouped is not null)
            Estimate = grouped.Fit.Estimate;
        else if (shared is not null)
            Estimate = shared.Estimate;
        else if (estimator == BinomialEstimator.BiasReduced)
            Estimate = BinomialSolver.BiasReduced(problem);
        else if (!Separation.IsSeparated)
            Estimate = BinomialSolver.Likelihood(problem);
        _limit = new(() => BinomialSolver.Limit(problem));
    }

    internal DesignLayout Layout { get; }

    internal BinomialProblem Problem { get; }

    internal BinomialEstimator Estimator { get; }

    internal Separation Separation => _separation.Value;

    /// <summary>The fit in which the frames of a burst share luck; null where frames are independent.</summary>
    internal ClusteredFit? Shared { get; }

    /// <summary>The fit in which levels vary; null where none do. Coefficients and rates are then those of a typical level.</summary>
    internal GroupedCurve? Grouped { get; }

    /// <summary>Sd of the bursts' luck on the link's scale; 0 where it is none, or of another kind.</summary>
    internal double LuckSd => Shared is { Luck: SharedLuck.NormalShift } shared ? shared.Spread : 0;

    /// <summary>The maximum; null where the likelihood has none.</summary>
    internal BinomialEstimate? Estimate { get; }

    /// <summary>Where the likelihood climbs to when it has no maximum.</summary>
    internal LimitEstimate Limit => _limit.Value;

    /// <summary>The coefficients; null for those that have no finite value.</summary>
    internal ImmutableArray<double?> Coefficients => Estimate is { } found ? [.. found.Coefficients] : Limit.Coefficients;

    internal double Ceiling => Estimate?.Ceiling ?? Problem.Ceiling ?? 1;

    internal double Floor => Estimate?.Floor ?? Problem.Floor ?? 0;

    internal double LogLikelihood => Estimate?.LogLikelihood ?? Limit.LogLikelihood;

    /// <summary>Whether a rate is a height of the line: ceiling and floor are known, and no normal luck is averaged over.</summary>
    internal bool RateIsHeight => Problem is { Ceiling: not null, Floor: not null } && Shared is not { Luck: SharedLuck.NormalShift };

    /// <summary>What is lost by holding contrasts.</summary>
    internal IProfile ProfileAt(double level, CancellationToken cancellation = default) =>
        Grouped is not null ? new GroupedProfile(Grouped.Fit, level, cancellation)
        : Shared is not null ? new ClusteredProfile(Shared, level)
        : new Profile(Problem, Estimator, level);

    /// <summary>The estimate without some rows; null where they alone hold a column, or no finite maximum is left.</summary>
    internal BinomialEstimate? Without(IReadOnlyCollection<int> rows)
    {
        if (Grouped is not null)
            return null;
        if (Shared is not null)
            return Shared.Without(Shared.Problem.Rows.Like(Problem, rows))?.Estimate;
        if (rows.Count == Problem.Rows)
            return null;
        try
        {
            var rest = Problem.Without(rows);
            return Estimator == BinomialEstimator.BiasReduced ? BinomialSolver.BiasReduced(rest)
                : Solvers.Separation.Of(rest).IsSeparated ? null
                : BinomialSolver.Likelihood(rest);
        }
        catch (Exception gone) when (gone is AliasedColumnsException or SolverException)
        {
            return null;
        }
    }

    /// <summary>The contrast of finite coefficients; null where one of them is not.</summary>
    internal double? Dot(ImmutableArray<double> contrast)
    {
        var (sum, coefficients) = (0.0, Coefficients);
        for (var i = 0; i < contrast.Length; i++)
        {
            if (contrast[i] == 0)
                continue;
            if (coefficients[i] is not { } coefficient)
                return null;
            sum += contrast[i] * coefficient;
        }

        return sum;
    }

    /// <summary>A contrast of the coefficients at the maximum; infinite where the climb takes it there, null where it fits as well at either end.</summary>
    internal double? Value(ImmutableArray<double> contrast)
    {
        if (Dot(contrast) is { } value)
            return value;
        Profile profile = new(Problem, Estimator, 0.5);
        if (profile.Cone is not { } cone)
            return null;
        var (down, up) = (cone.Reaches(contrast.AsSpan(), -1), cone.Reaches(contrast.AsSpan(), 1));
        return (down ?? false, up ?? false) switch
        {
            (false, false) => profile.Limit(contrast),
            (false, true) => double.PositiveInfinity,
            (true, false) => double.NegativeInfinity,
            _ => null,
        };
    }

    /// <summary>The rate of a linear predictor, averaged over the luck of bursts.</summary>
    internal double RateOf(double eta) =>
        double.IsPositiveInfinity(eta) ? Ceiling
        : double.IsNegativeInfinity(eta) ? Floor
        : Floor + (Ceiling - Floor) * AveragedLink.At(Problem.Link, eta, LuckSd).F;

    /// <summary>The linear predictor of a rate; null at or beyond ceiling and floor.</summary>
    internal double? PredictorOf(double rate) => Predictor(rate, Ceiling, Floor);

    /// <summary>The root of twice the log-likelihood lost by holding the rate of a row at a value: positive where the estimate is above it.</summary>
    internal double SignedRoot(ImmutableArray<double> row, double rate)
    {
        if (Value(row) is not { } eta)
            return 0;
        var size = LossRoot(row, rate);
        return RateOf(eta) >= rate ? size : -size;
    }

    /// <summary>The root of twice the log-likelihood lost by holding the rate of a row; ceiling and floor, where estimated, adapt.</summary>
    internal double LossRoot(ImmutableArray<double> row, double rate)
    {
        if (RateIsHeight)
            return PredictorOf(rate) is { } eta ? LossRootOf(row, eta) : double.PositiveInfinity;
        if (Shared is not null)
            return Share(rate, Ceiling, Floor) is { } share ? AveragedLossRoot(Shared, row, share) : double.PositiveInfinity;
        var held = AsymptoteSearch.Highest(Problem, rate, (ceiling, floor) => Held(row, rate, ceiling, floor));
        return Math.Sqrt(2 * Math.Max(0, LogLikelihood - held));
    }

    /// <summary>The root of twice the objective lost by holding a contrast of the coefficients.</summary>
    internal double LossRootOf(ImmutableArray<double> contrast, double value)
    {
        var profile = ProfileAt(0.5);
        return Math.Max(0, profile.Excess(contrast, value) + profile.Bound);
    }

    /// <summary>The same where the height that has a rate depends on the luck, which adapts.</summary>
    private double AveragedLossRoot(ClusteredFit shared, ImmutableArray<double> row, double share)
    {
        ClusteredProfile profile = new(shared, 0.5);
        return Math.Max(0, profile.Excess(row, spread => AveragedLink.Height(Problem.Link, share, spread)) + profile.Bound);
    }

    private double Held(ImmutableArray<double> row, double rate, double ceiling, double floor) =>
        Predictor(rate, ceiling, floor) is { } eta
            ? BinomialSolver.Likelihood(Problem with { Ceiling = ceiling, Floor = floor }, new() { Held = new(row, eta) }).LogLikelihood
            : double.NegativeInfinity;

    private double? Predictor(double rate, double ceiling, double floor) =>
        Share(rate, ceiling, floor) is { } share ? AveragedLink.Height(Problem.Link, share, LuckSd).Eta : null;

    /// <summary>How far a rate is from the floor to the ceiling; null at or beyond them.</summary>
    private static double? Share(double rate, double ceiling, double floor) =>
        (rate - floor) / (ceiling - floor) is var share and > 0 and < 1 ? share : null;
}
