using System.Collections.Immutable;
using System.Runtime.InteropServices;

namespace Handhold.Solvers;

/// <summary>The maximum of a grouped likelihood over coefficients and spreads.</summary>
/// <remarks>The caller has made sure that keepers and rejects do not separate, and that some level of each grouping has several frames.</remarks>
internal sealed partial class GroupedFit
{
    // Nodes of the first fit of one intercept; doubled until the log-likelihood settles.
    private const int FirstNodes = 25;
    private const double Settled = 1e-9;

    // Spreads beyond are as good as infinite.
    private const double Endless = 50;
    private const int Rounds = 20;
    private const int Steps = 60;
    private const double Near = 1e-5;
    private const double Close = 1e-7;

    private readonly ClusteredProblem? _clustered;
    private readonly HermiteNodes _nodes;
    private readonly Lazy<double[]?> _shifts;
    private readonly double _columnStep; // orthonormal columns all have much the same standard error: that of one row

    /// <param name="problem">Rows and what varies.</param>
    /// <param name="nodes">Quadrature nodes; null: as many as it takes, or Laplace's method where they are not to be had.</param>
    /// <param name="cancellation">Stops the climb.</param>
    internal GroupedFit(GroupedProblem problem, int? nodes, CancellationToken cancellation = default)
    {
        (Problem, Design) = (problem, OrthonormalDesign.Of(problem.Rows));
        _columnStep = Difference * Math.Sqrt(6.0 * problem.Rows.Rows / MemoryMarshal.ToEnumerable(problem.Rows.Frames).Sum(n => (double)n));
        Bases = [.. problem.Effects.Select(e => EffectBasis.Of(e, problem.Centre(e.Columns[^1])))];
        _clustered = IsOneIntercept && nodes != 1 ? problem.Clustered() : null;
        _nodes = HermiteNodes.Of(_clustered is null ? 1 : nodes ?? FirstNodes);
        var start = Start(out var plain);
        var climb = Climb(start, cancellation);
        while (!IsSettled(climb) && nodes is null && _nodes.Count < HermiteNodes.Most)
        {
            _nodes = HermiteNodes.Of(Math.Min(HermiteNodes.Most, 2 * _nodes.Count));
            climb = Climb(climb.Point, cancellation);
        }
        HasSettled = nodes is not null || IsSettled(climb);
        climb = WithoutSpreads(climb, plain, cancellation);
        (Top, LogLikelihood) = (climb.Point, climb.LogLikelihood);
        (Covariance, Estimate) = Finish(climb);
        _modes = new(() => new(this));
        _shifts = new(() => Nodes > 1 ? new double[Top.Length] : GroupedRemainder.Shifts(this));
    }

    internal GroupedProblem Problem { get; }

    internal OrthonormalDesign Design { get; }

    /// <summary>The coordinates of each grouping's effects in <see cref="Top"/>.</summary>
    internal ImmutableArray<EffectBasis> Bases { get; }

    /// <summary>Whether quadrature can be had.</summary>
    internal bool IsOneIntercept => Problem.Effects is [{ Columns: [0] }];

    /// <summary>Nodes of the quadrature; 1 is Laplace's method.</summary>
    internal int Nodes => _nodes.Count;

    /// <summary>Whether twice the nodes would not change the log-likelihood; always where the number was given, or the method is Laplace's.</summary>
    internal bool HasSettled { get; }

    /// <summary>Coefficients of the design's orthonormal columns, then the spreads.</summary>
    internal double[] Top { get; }

    internal double LogLikelihood { get; }

    /// <summary>Minus the second derivatives at the top.</summary>
    internal double[] Curvature { get; private set; } = [];

    /// <summary>Of the numbers of <see cref="Top"/>; zero where a spread is none.</summary>
    internal double[] Covariance { get; }

    /// <summary>The coefficients, the doubt on the spreads in their covariance.</summary>
    internal BinomialEstimate Estimate { get; }

    /// <summary>By how many standard errors the numbers of <see cref="Top"/> would move by what Laplace's method leaves out to the next order; none by quadrature, null where levels are too entangled to tell.</summary>
    internal double[]? Shifts => _shifts.Value;

    /// <summary>Spreads of <see cref="Top"/> that are none.</summary>
    internal ImmutableArray<int> Nothing { get; private set; } = [];

    /// <summary>The likelihood in turned columns.</summary>
    internal IGroupedLikelihood Likelihood(ReadOnlySpan<double> contrast, ImmutableArray<EffectBasis> bases) =>
        _clustered is null
            ? new GroupedParts(Problem, new(Design, contrast), bases)
            : new GroupedQuadrature(_clustered, Design, _nodes, contrast);

    /// <summary>Where Λ of a grouping begins in <see cref="Top"/>.</summary>
    internal int SpreadsOf(int grouping) => Design.Columns + Problem.Effects.Take(grouping).Sum(e => e.Spreads);

    /// <summary>Whether a number is on the diagonal of a Λ.</summary>
    internal bool IsOwnSpread(int place) => OwnSpreads().Contains(place);

    // The fit without spreads, and some of each beside it.
    private double[] Start(out double[] plain)
    {
        plain = new double[Design.Columns + Problem.Spreads];
        BinomialSolver.Likelihood(Problem.Rows).Coefficients.CopyTo(plain);
        Design.FromCoefficients(plain.AsSpan(0, Design.Columns));
        double[] start = [.. plain];
        for (var t = 0; t < Problem.Effects.Length; t++)
        {
            var at = SpreadsOf(t);
            start[at] = Problem.Effects[t].Columns[0] == 0 ? 0.7 : 0.3;
            if (Problem.Effects[t].Size > 1)
                start[at + 2] = 0.3;
        }
        return start;
    }

    private GroupedClimb Climb(double[] start, CancellationToken cancellation, params ReadOnlySpan<int> held)
    {
        var likelihood = Likelihood([], Bases);
        GroupedClimb climb = new(likelihood, [.. start], CurvatureAt(likelihood, start, cancellation), held);
        for (var round = 0; round < Rounds; round++)
        {
            climb.Climb(Near, Steps, cancellation);
            if (Spreads().Any(s => Math.Abs(climb.Point[s]) > Endless))
                throw new SolverException("The likelihood rises with the spread without end.", Report(climb));
            Curvature = CurvatureAt(likelihood, climb.Point, cancellation);
            if (Saddle(climb, held) is >= 0 and var spread)
            {
                climb.Point[spread] = 0.3;
                climb = new(likelihood, climb.Point, CurvatureAt(likelihood, climb.Point, cancellation), held);
                continue;
            }
            climb.Curvature = [.. Curvature];
            if (climb.Climb(Close, 3, cancellation))
                return climb;
        }
        throw new SolverException("The likelihood with levels that vary has no maximum within reach.", Report(climb));
    }

    // A spread of none that more would be better than, though the slope there is zero.
    private int Saddle(GroupedClimb climb, ReadOnlySpan<int> held)
    {
        foreach (var spread in OwnSpreads())
            if (!held.Contains(spread) && Math.Abs(climb.Point[spread]) < 1e-3 && Curvature[spread * climb.Point.Length + spread] < 0)
                return spread;
        return -1;
    }

    // Spreads that none is as good as are none.
    private GroupedClimb WithoutSpreads(GroupedClimb climb, double[] plain, CancellationToken cancellation)
    {
        var (gradient, likelihood) = (new double[plain.Length], Likelihood([], Bases));
        if (likelihood.At(plain, gradient) >= climb.LogLikelihood - Settled)
        {
            Nothing = [.. Spreads()];
            return Climb(plain, cancellation, [.. Nothing]);
        }
        foreach (var spread in OwnSpreads())
        {
            double[] without = [.. climb.Point];
            int[] gone = [spread];
            if (IsFirstOfTwo(spread))
            {
                without[spread + 2] = Math.Sqrt(without[spread + 1] * without[spread + 1] + without[spread + 2] * without[spread + 2]);
                without[spread + 1] = 0;
                gone = [spread, spread + 1];
            }
            without[spread] = 0;
            if (!(likelihood.At(without, gradient) >= climb.LogLikelihood - Settled))
                continue;
            Nothing = [.. Nothing.Union(gone)];
            climb = Climb(without, cancellation, [.. Nothing]);
        }
        return climb;
    }

    private IEnumerable<int> Spreads() => Enumerable.Range(Design.Columns, Problem.Spreads);

    // The diagonals of every Λ.
    private IEnumerable<int> OwnSpreads() =>
        Enumerable
            .Range(0, Problem.Effects.Length)
            .SelectMany(t => Problem.Effects[t].Size == 1 ? [SpreadsOf(t)] : new[] { SpreadsOf(t), SpreadsOf(t) + 2 });

    private bool IsFirstOfTwo(int spread) =>
        Enumerable.Range(0, Problem.Effects.Length).Any(t => Problem.Effects[t].Size == 2 && SpreadsOf(t) == spread);

    private bool IsSettled(GroupedClimb climb)
    {
        if (_clustered is null || climb.Point[^1] == 0 || _nodes.Count >= HermiteNodes.Most)
            return _clustered is null || climb.Point[^1] == 0;
        var finer = HermiteNodes.Of(Math.Min(HermiteNodes.Most, 2 * _nodes.Count));
        GroupedQuadrature likelihood = new(_clustered, Design, finer, []);
        return Math.Abs(likelihood.At(climb.Point, new double[climb.Point.Length]) - climb.LogLikelihood) < Settled;
    }
}
