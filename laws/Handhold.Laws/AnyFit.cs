using System.Collections.Immutable;
using Handhold.Randomness;
using Handhold.Solvers;

namespace Handhold.Laws;

/// <summary>Whatever the numbers, a likelihood fit is finite or the table separates, a bias-reduced fit is finite, and intervals contain their estimates.</summary>
internal static class AnyFit
{
    private const long Seed = 20250203;

    /// <summary>What is wrong with both fits of so many random problems; empty when nothing is.</summary>
    internal static ImmutableArray<string> Faults(int problems, int threads)
    {
        var faults = new string?[problems];
        Parallel.For(
            0,
            problems,
            new() { MaxDegreeOfParallelism = threads },
            i => faults[i] = Fault(Randomness.Seed.From(Seed).Stream(i), i)
        );
        return [.. faults.Index().Where(f => f.Item is not null).Select(f => $"problem {f.Index}: {f.Item}")];
    }

    private static string? Fault(RandomStream luck, int number)
    {
        try
        {
            var problem = RandomProblems.Draw(luck, asymptotes: number % 2 == 1);
            return AliasedColumn.In(problem).IsEmpty ? Likelihood(problem, luck) ?? BiasReduced(problem, luck)
                : Refuses<AliasedColumnsException>(problem) ? null
                : "aliased columns are not refused";
        }
#pragma warning disable CA1031 // any exception at all is a fault of the library
        catch (Exception fault)
#pragma warning restore CA1031
        {
            return fault.ToString();
        }
    }

    private static string? Likelihood(BinomialProblem problem, RandomStream luck)
    {
        if (problem is not { Ceiling: 1, Floor: 0 })
            return null; // with asymptotes off their bounds the likelihood may rise for ever without separation
        var verdict = Separation.Of(problem);
        var column = (int)(problem.Columns.Length * luck.Uniform());
        var interval = ProfileInterval.Of(problem, BinomialEstimator.Likelihood, Unit(problem, column));
        if (!verdict.IsSeparated)
            return verdict.Kind == SeparationKind.Unknown
                ? "separation undecided"
                : OfFit(BinomialSolver.Likelihood(problem))
                    ?? OfInterval(interval, BinomialSolver.Likelihood(problem).Coefficients[column]);
        var limit = BinomialSolver.Limit(problem);
        var gone = verdict.Columns.FirstOrDefault(c => c.Index == column);
        return !Refuses<SolverException>(problem) ? "a separated likelihood has a maximum"
            : !double.IsFinite(limit.LogLikelihood) ? "a limit is no number"
            : interval.Lower is null != gone is { Sign: <= 0 } || interval.Upper is null != gone is { Sign: >= 0 }
                ? $"an interval has not the sides that separation leaves: {interval.Lower} to {interval.Upper}"
            : limit.Coefficients[column] is { } finite && !(interval.Lower < finite && finite < interval.Upper)
                ? $"{finite} is not inside {interval.Lower} to {interval.Upper}"
            : null;
    }

    private static string? BiasReduced(BinomialProblem problem, RandomStream luck)
    {
        var fit = BinomialSolver.BiasReduced(problem);
        var column = (int)(problem.Columns.Length * luck.Uniform());
        var interval = ProfileInterval.Of(problem, BinomialEstimator.BiasReduced, Unit(problem, column));
        return OfFit(fit) ?? OfInterval(interval, fit.Coefficients[column]);
    }

    private static string? OfFit(BinomialEstimate fit) =>
        !fit.Coefficients.All(double.IsFinite) ? "a coefficient is no number"
        : !fit.Coefficients.Select((_, j) => fit.StandardError(j)).All(e => e > 0 && double.IsFinite(e))
            ? "a standard error is no positive number"
        : !(fit.LogLikelihood <= 0 && double.IsFinite(fit.LogLikelihood) && fit.Deviance > -1e-6) ? "a likelihood is impossible"
        : null;

    private static string? OfInterval(ProfileInterval interval, double estimate) =>
        interval is { Lower: { } lower, Upper: { } upper } && lower < estimate && estimate < upper && double.IsFinite(upper - lower)
            ? null
            : $"{interval.Lower} to {interval.Upper} does not contain {estimate}";

    private static bool Refuses<T>(BinomialProblem problem)
        where T : Exception
    {
        try
        {
            BinomialSolver.Likelihood(problem);
            return false;
        }
        catch (T)
        {
            return true;
        }
    }

    private static ImmutableArray<double> Unit(BinomialProblem problem, int column) =>
        [.. problem.Columns.Select((_, j) => j == column ? 1.0 : 0.0)];
}
