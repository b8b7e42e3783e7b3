using Handhold.Simulation;
using MathNet.Numerics;
using MathNet.Numerics.LinearAlgebra;
using MathNet.Numerics.Optimization;

namespace Handhold.Laws;

/// <summary>Planning as if the best curve were the truth: what plans cost that ignore doubt and shared luck.</summary>
internal static class PlugIn
{
    private const int Budget = 1000;

    /// <summary>The posterior mode in (tau, log b, log odds of the ceiling's loss), frames independent.</summary>
    internal static World Mode(FrameTable table, Priors priors, NormalPrior halfPoint)
    {
        var cells = table
            .GroupBy(row => row.Exposure)
            .Select(speed => (At: speed.Key, Frames: speed.Sum(row => row.Frames), Keepers: speed.Sum(row => row.Keepers)))
            .ToArray();
        var start = Vector<double>.Build.DenseOfArray([halfPoint.Mean, Math.Log(priors.Steepness.Median), Math.Log(0.03 / 0.97)]);
        var found = NelderMeadSimplex.Minimum(ObjectiveFunction.Value(Surprise), start, 1e-10, 5000);
        return Shape(found.MinimizingPoint);

        double Surprise(Vector<double> at)
        {
            var shape = Shape(at);
            var log = 0.0;
            foreach (var (x, frames, keepers) in cells)
            {
                var rate = shape.RateAt(x);
                log += (keepers > 0 ? keepers * Math.Log(rate) : 0) + (keepers < frames ? (frames - keepers) * Math.Log(1 - rate) : 0);
            }
            var tau = (at[0] - halfPoint.Mean) / halfPoint.StandardDeviation;
            var b = (at[1] - Math.Log(priors.Steepness.Median)) / priors.Steepness.LogStandardDeviation;
            var loss = priors.CeilingLoss.A * Math.Log(1 - shape.Ceiling) + priors.CeilingLoss.B * Math.Log(shape.Ceiling);
            return double.IsFinite(log) ? tau * tau / 2 + b * b / 2 - loss - log : double.MaxValue;
        }

        static World Shape(Vector<double> at) =>
            new()
            {
                HalfPoint = at[0],
                Steepness = Math.Exp(at[1]),
                Ceiling = 1 / (1 + Math.Exp(at[2])),
            };
    }

    /// <summary>Smallest number of independent frames that brings so many keepers; null beyond the budget.</summary>
    internal static int? FramesNeeded(double rate, int keepers, double assurance)
    {
        for (var frames = keepers; frames <= Budget; frames++)
        {
            var fewer = 0.0;
            for (var k = 0; k < keepers; k++)
            {
                fewer += SpecialFunctions.Binomial(frames, k) * Math.Pow(rate, k) * Math.Pow(1 - rate, frames - k);
            }
            if (1 - fewer >= assurance)
            {
                return frames;
            }
        }
        return null;
    }
}
