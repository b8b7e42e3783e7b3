using Handhold.Kernels;

namespace Handhold.Solvers;

/// <summary>The log-likelihood of clusters over θ, the coefficients of orthonormal columns, and a spread; owns its workspace, so that evaluations allocate nothing.</summary>
internal sealed class ClusteredLikelihood
{
    private readonly ClusteredProblem _problem;
    private readonly IClusterLaw _law;
    private readonly int[] _rejects;
    private readonly double[] _predictors;
    private readonly double[] _gradient;
    private readonly double[] _curvature;

    /// <param name="problem">The clusters.</param>
    /// <param name="design">Their rows' design.</param>
    /// <param name="law">How frames of a cluster share luck.</param>
    /// <param name="contrast">A contrast of the columns' coefficients that the first θ is to stand for; empty for none.</param>
    internal ClusteredLikelihood(ClusteredProblem problem, OrthonormalDesign design, IClusterLaw law, ReadOnlySpan<double> contrast)
    {
        (_problem, _law, Columns) = (problem, law, design.Columns);
        var rows = problem.Rows.Rows;
        _rejects = [.. Enumerable.Range(0, rows).Select(i => problem.Rows.Frames.Span[i] - problem.Rows.Keepers.Span[i])];
        (Basis, _predictors) = (new(design, contrast), new double[rows]);
        (_gradient, _curvature) = (new double[problem.Widest + 1], new double[(problem.Widest + 1) * (problem.Widest + 1)]);
    }

    internal TurnedDesign Basis { get; }

    internal int Columns { get; }

    /// <summary>The contrast is so much times the first θ.</summary>
    internal double Length => Basis.Length;

    /// <summary>To and from the coordinates of the design's own orthonormal columns.</summary>
    internal void Turn(Span<double> theta) => Basis.Turn(theta);

    /// <param name="theta">Coefficients, then the spread.</param>
    internal double At(ReadOnlySpan<double> theta)
    {
        Predict(theta);
        var sum = 0.0;
        for (var c = 0; c < _problem.Clusters; c++)
            sum += _problem.Weights[c] * _law.LogLikelihood(ClusterAt(c), theta[Columns]);
        return sum;
    }

    /// <summary>The same with its gradient and, lower triangle, minus its second derivatives.</summary>
    internal double At(ReadOnlySpan<double> theta, Span<double> gradient, Span<double> curvature)
    {
        Predict(theta);
        gradient.Clear();
        curvature.Clear();
        var sum = 0.0;
        for (var c = 0; c < _problem.Clusters; c++)
        {
            var cluster = ClusterAt(c);
            var size = cluster.Rows + 1;
            var slopes = _gradient.AsSpan(0, size);
            var bends = _curvature.AsSpan(0, size * size);
            sum += _problem.Weights[c] * _law.Evaluate(cluster, theta[Columns], slopes, bends);
            Add(c, slopes, bends, gradient, curvature);
        }
        return sum;
    }

    private Cluster ClusterAt(int index)
    {
        var (from, to) = (_problem.Starts[index], _problem.Starts[index + 1]);
        return new(_predictors.AsSpan(from, to - from), _problem.Rows.Keepers.Span[from..to], _rejects.AsSpan(from, to - from));
    }

    private void Predict(ReadOnlySpan<double> theta)
    {
        for (var i = 0; i < _predictors.Length; i++)
            _predictors[i] = Orthonormal.Dot(Basis.Row(i), theta);
    }

    // Of the predictors of a cluster's rows, to θ.
    private void Add(int index, ReadOnlySpan<double> slopes, ReadOnlySpan<double> bends, Span<double> gradient, Span<double> curvature)
    {
        var (start, weight, rows, all) = (_problem.Starts[index], _problem.Weights[index], slopes.Length - 1, Columns + 1);
        gradient[Columns] += weight * slopes[rows];
        curvature[all * all - 1] += weight * bends[^1];
        for (var i = 0; i < rows; i++)
        {
            var x = Basis.Row(start + i);
            for (var j = 0; j < Columns; j++)
            {
                gradient[j] += weight * slopes[i] * x[j];
                curvature[Columns * all + j] += weight * bends[rows * (rows + 1) + i] * x[j];
            }
            for (var k = 0; k <= i; k++)
            {
                var bend = weight * bends[i * (rows + 1) + k];
                if (bend == 0)
                    continue;
                var y = Basis.Row(start + k);
                for (var a = 0; a < Columns; a++)
                for (var b = 0; b <= a; b++)
                    curvature[a * all + b] += i == k ? bend * x[a] * x[b] : bend * (x[a] * y[b] + y[a] * x[b]);
            }
        }
    }
}
