using BenchmarkDotNet.Attributes;
using Handhold.Solvers;
using MathNet.Numerics.LinearAlgebra;
using MathNet.Numerics.Optimization;
using Microsoft.ML;
using Microsoft.ML.Data;
using Microsoft.ML.Trainers;

namespace Handhold.Benchmarks;

/// <summary>The exact fits with covariance and deviance, beside others' fits of the same likelihood.</summary>
[MemoryDiagnoser]
public class ExactFits
{
    private readonly double[] _found = new double[7];
    private readonly MLContext _context = new(seed: 1);
    private readonly IDataView _rows;

    public ExactFits()
    {
        _rows = _context.Data.LoadFromEnumerable(
            NineBySix.Stops.SelectMany(
                (x, i) => Enumerable.Range(0, NineBySix.Frames[i]).Select(f => new Row { X = [(float)x], Label = f < NineBySix.Keepers[i] })
            )
        );
        if (PlainC.IsHere && !(Math.Abs(C() - Likelihood()) < 1e-9))
            throw new InvalidOperationException("The fits do not agree, so their speeds say nothing.");
    }

    [Benchmark(Baseline = true, Description = "plain C, -O3 -march=native")]
    public double C() => PlainC.IsHere ? PlainC.Fit(NineBySix.Stops, NineBySix.Frames, NineBySix.Keepers, _found) : double.NaN;

    [Benchmark(Description = "likelihood, the solver inside")]
    public double Likelihood() => new LogisticLine(NineBySix.Design, NineBySix.Frames, NineBySix.Keepers).Likelihood().Deviance;

    [Benchmark(Description = "bias-reduced, the solver inside")]
    public double BiasReduced() => new LogisticLine(NineBySix.Design, NineBySix.Frames, NineBySix.Keepers).BiasReduced().Deviance;

    [Benchmark(Description = "likelihood, BinomialSolver with its checks and result")]
    public BinomialEstimate LikelihoodResult() => BinomialSolver.Likelihood(NineBySix.Problem);

    [Benchmark(Description = "bias-reduced, BinomialSolver with its checks and result")]
    public BinomialEstimate BiasReducedResult() => BinomialSolver.BiasReduced(NineBySix.Problem);

    [Benchmark(Description = "likelihood, MathNet's Newton minimiser")]
    public double MathNetNewton()
    {
        var objective = ObjectiveFunction.GradientHessian(Negative);
        var top = new NewtonMinimizer(1e-8, 50).FindMinimum(objective, Vector<double>.Build.Dense(2));
        return top.FunctionInfoAtMinimum.Hessian.Inverse()[0, 0] + 2 * top.FunctionInfoAtMinimum.Value;
    }

    [Benchmark(Description = "likelihood, ML.NET's logistic regression (no covariance)")]
    public float MlNet()
    {
        var trainer = _context.BinaryClassification.Trainers.LbfgsLogisticRegression(
            new LbfgsLogisticRegressionBinaryTrainer.Options
            {
                L1Regularization = 0,
                L2Regularization = 0,
                NumberOfThreads = 1,
            }
        );
        return trainer.Fit(_rows).Model.SubModel.Bias;
    }

    private static (double, Vector<double>, Matrix<double>) Negative(Vector<double> b)
    {
        var (value, gradient, hessian) = (0.0, Vector<double>.Build.Dense(2), Matrix<double>.Build.Dense(2, 2));
        for (var i = 0; i < NineBySix.Stops.Length; i++)
        {
            var (x, n, k) = (NineBySix.Stops[i], NineBySix.Frames[i], NineBySix.Keepers[i]);
            var eta = b[0] + b[1] * x;
            var p = 1 / (1 + Math.Exp(-eta));
            var (residual, weight) = (k - n * p, n * p * (1 - p));
            value -= (eta < 0 ? k : k - n) * eta - n * Math.Log(1 + Math.Exp(-Math.Abs(eta)));
            gradient[0] -= residual;
            gradient[1] -= residual * x;
            hessian[0, 0] += weight;
            hessian[0, 1] += weight * x;
            hessian[1, 1] += weight * x * x;
        }
        hessian[1, 0] = hessian[0, 1];
        return (value, gradient, hessian);
    }

    private sealed class Row
    {
        [VectorType(1)]
        [ColumnName("Features")]
        public float[] X { get; init; } = [];

        public bool Label { get; init; }
    }
}
