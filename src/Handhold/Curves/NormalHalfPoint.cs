using System.Collections.Immutable;
using Handhold.Kernels;

namespace Handhold.Curves;

/// <summary>A normal half point.</summary>
internal sealed class NormalHalfPoint : HalfPoint
{
    private const double Reach = 8;
    private const double UsualStep = 0.6; // sds: trapezoid sums of a smooth function against a normal density are then good to 1e-10
    private readonly double _mean;
    private readonly double _sd;

    /// <param name="mean">Mean, log2 seconds.</param>
    /// <param name="sd">Standard deviation, positive, stops.</param>
    internal NormalHalfPoint(double mean, double sd) => (_mean, _sd) = (mean, sd);

    internal override double Low => _mean - Reach * _sd;

    internal override double High => _mean + Reach * _sd;

    internal override double Cdf(double t) => Normal.Cdf((t - _mean) / _sd);

    internal override HalfPoint Shifted(double sd) => new NormalHalfPoint(_mean, Math.Sqrt(_sd * _sd + sd * sd));

    internal override (double Start, double Step, ReadOnlyMemory<double> Masses) Nodes(double coarsest)
    {
        var step = Math.Min(UsualStep, coarsest / _sd);
        var half = (int)Math.Ceiling(6 / step);
        var masses = step == UsualStep ? UsualMasses : Masses(step, half);
        return (_mean - half * step * _sd, step * _sd, masses.AsMemory());
    }

    private static ImmutableArray<double> UsualMasses { get; } = Masses(UsualStep, (int)Math.Ceiling(6 / UsualStep));

    private static ImmutableArray<double> Masses(double step, int half)
    {
        double[] densities = [.. Enumerable.Range(-half, 2 * half + 1).Select(i => Normal.Density(i * step))];
        var sum = densities.Sum();
        return [.. densities.Select(d => d / sum)];
    }
}
