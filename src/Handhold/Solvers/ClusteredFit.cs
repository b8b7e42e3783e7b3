using System.Collections.Immutable;
using Handhold.Kernels;

namespace Handhold.Solvers;

/// <summary>The maximum of a clustered likelihood over coefficients and spread.</summary>
/// <remarks>The caller has made sure that keepers and rejects do not separate.</remarks>
internal sealed class ClusteredFit
{
    // Nodes of the first fit; doubled until the log-likelihood settles.
    private const int FirstNodes = 25;
    private const double Settled = 1e-9;
    private const double NoSpread = 1e-5;

    // Spreads beyond are as good as infinite: with beta rates a correlation above 1 - 1e-8.
    private const double Endless = 1e4;

    internal ClusteredFit(ClusteredProblem problem, SharedLuck luck, int? nodes)
    {
        (Problem, Design, Luck) = (problem, OrthonormalDesign.Of(problem.Rows), luck);
        Nodes = HermiteNodes.Of(nodes ?? FirstNodes);
        var plain = new double[Design.Columns + 1];
        BinomialSolver.Likelihood(problem.Rows).Coefficients.CopyTo(plain);
        Design.FromCoefficients(plain.AsSpan(0, Design.Columns));
        var climb = Highest(plain);
        while (!IsSettled(climb) && nodes is null && Nodes.Count < HermiteNodes.Most)
        {
            Nodes = HermiteNodes.Of(Math.Min(HermiteNodes.Most, 2 * Nodes.Count));
            climb = Climb([.. climb.Theta], false);
        }
        HasSettled = nodes is not null || IsSettled(climb);
        (Top, LogLikelihood) = ([.. climb.Theta], climb.LogLikelihood);
        Top[^1] = Math.Abs(Top[^1]);
        (Estimate, SpreadError) = Finish(climb);
    }

    internal ClusteredProblem Problem { get; }

    internal SharedLuck Luck { get; }

    internal OrthonormalDesign Design { get; }

    /// <summary>Nodes of the quadrature.</summary>
    internal HermiteNodes Nodes { get; private set; }

    /// <summary>Whether twice the nodes would not change the log-likelihood.</summary>
    internal bool HasSettled { get; }

    /// <summary>Coefficients of the design's orthonormal columns, then the spread.</summary>
    internal double[] Top { get; }

    internal double LogLikelihood { get; }

    internal double Spread => Top[^1];

    /// <summary>Standard error of the spread; null at either end of its range.</summary>
    internal double? SpreadError { get; }

    /// <summary>Whether no finite spread is best.</summary>
    internal bool IsEndless => Spread == Endless;

    /// <summary>The coefficients, the doubt on the spread in their covariance.</summary>
    internal BinomialEstimate Estimate { get; }

    /// <summary>The fit without some rows; null where they alone hold a column, or no finite maximum is left.</summary>
    internal ClusteredFit? Without(IReadOnlySet<int> rows)
    {
        if (rows.Count == Problem.Rows.Rows)
            return null;
        try
        {
            var rest = Problem.Without(rows);
            return Separation.Of(rest.Rows).IsSeparated ? null : new(rest, Luck, Nodes.Count);
        }
        catch (Exception gone) when (gone is AliasedColumnsException or SolverException)
        {
            return null;
        }
    }

    internal IClusterLaw Law(HermiteNodes nodes) => Luck == SharedLuck.BetaRates ? new BetaRates(Problem) : new NormalShift(Problem, nodes);

    // From some spread; none, or no end of it, if that is as good.
    private ClusteredClimb Highest(double[] plain)
    {
        double[] spread = [.. plain];
        spread[^1] = 1;
        var none = Climb(plain, spreadHeld: true);
        var some = Climb(spread, spreadHeld: false, arrives: Problem.AnyMixed);
        if (!Problem.AnyMixed && (some.Spread > 50 || some.Decrement > 1e-4))
        {
            if (Luck == SharedLuck.NormalShift)
                throw new SolverException("The likelihood rises with the spread without end.", Report(some));
            double[] endless = [.. some.Theta];
            endless[^1] = Endless;
            some = Climb(endless, spreadHeld: true);
        }
        return Math.Abs(some.Spread) < NoSpread || none.LogLikelihood >= some.LogLikelihood ? none : some;
    }

    private ClusteredClimb Climb(double[] start, bool spreadHeld, bool arrives = true)
    {
        ClusteredLikelihood likelihood = new(Problem, Design, Law(Nodes), []);
        ClusteredClimb climb = new(likelihood, null, spreadHeld);
        start.CopyTo(climb.Theta, 0);
        return climb.Climb() || !arrives
            ? climb
            : throw new SolverException("The likelihood with shared luck has no maximum within reach.", Report(climb));
    }

    private bool IsSettled(ClusteredClimb climb)
    {
        if (Luck == SharedLuck.BetaRates || climb.Spread == 0 || Nodes.Count >= HermiteNodes.Most)
            return Luck == SharedLuck.BetaRates || climb.Spread == 0;
        var finer = HermiteNodes.Of(Math.Min(HermiteNodes.Most, 2 * Nodes.Count));
        return Math.Abs(new ClusteredLikelihood(Problem, Design, Law(finer), []).At(climb.Theta) - climb.LogLikelihood) < Settled;
    }

    private (BinomialEstimate, double?) Finish(ClusteredClimb climb)
    {
        var (columns, isInside) = (Design.Columns, Spread is > 0 and < Endless);
        var size = isInside ? columns + 1 : columns;
        var factor = new double[size * size];
        for (var a = 0; a < size; a++)
        for (var b = 0; b < size; b++)
            factor[a * size + b] = climb.Curvature[a * (columns + 1) + b];
        if (!Cholesky.Factor(factor, size, 0))
            throw new SolverException("The likelihood with shared luck is level at its top.", Report(climb));
        var inverse = new double[columns * columns];
        var error = 0.0;
        for (var k = 0; k < size; k++)
        {
            var column = new double[size];
            column[k] = 1;
            Cholesky.Back(factor, column);
            error += isInside ? column[columns] * column[columns] : 0;
            Design.ToCoefficients(column.AsSpan(0, columns));
            for (var i = 0; i < columns; i++)
            for (var j = 0; j < columns; j++)
                inverse[i * columns + j] += column[i] * column[j];
        }
        return (
            new(BinomialEstimator.Likelihood, Coefficients(climb.Theta), [.. inverse], Report(climb))
            {
                LogLikelihood = LogLikelihood,
                Deviance = 2 * (Problem.Saturated - LogLikelihood),
                Ceiling = Problem.Rows.Ceiling!.Value,
                Floor = Problem.Rows.Floor!.Value,
            },
            isInside ? Math.Sqrt(error) : null
        );
    }

    private ImmutableArray<double> Coefficients(ReadOnlySpan<double> theta)
    {
        var b = theta[..Design.Columns].ToArray();
        Design.ToCoefficients(b);
        return [.. b];
    }

    private SolverReport Report(ClusteredClimb climb) => new(Coefficients(climb.Theta), climb.LogLikelihood, climb.Taken, climb.Decrement);
}
