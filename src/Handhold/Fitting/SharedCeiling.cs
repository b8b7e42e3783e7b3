using System.Collections.Immutable;
using Handhold.Kernels;

namespace Handhold.Fitting;

/// <summary>The ceiling that several curves with terms share: what each curve's frames say of it, along the coordinate z whose prior is standard normal.</summary>
/// <remarks>
/// Given the ceiling the curves are independent, so a curve's points are weighed anew by what the others say at the ceiling of each. What a curve says is
/// its posterior of z over its prior: the exponential of the polynomial of degree four whose density has the first four moments of the curve's points.
/// Of all densities with these moments it is the one of most entropy relative to the prior: Jaynes (1957), Physical Review 106, 620-630.
/// </remarks>
internal sealed class SharedCeiling
{
    private const double Reach = 5;
    private const double Step = 0.05;
    private const int Degree = 4;

    private static ImmutableArray<double> Grid { get; } =
    [.. Enumerable.Range(0, (int)(2 * Reach / Step) + 1).Select(i => -Reach + i * Step)];

    private readonly ImmutableArray<double[]> _polynomials;

    private SharedCeiling(ImmutableArray<double[]> polynomials, double logEvidence) =>
        (_polynomials, LogEvidence) = (polynomials, logEvidence);

    internal double LogEvidence { get; }

    internal static SharedCeiling Over(IReadOnlyCollection<TermSample> samples)
    {
        ImmutableArray<double[]> polynomials = [.. samples.Select(Polynomial)];
        var joint = Grid.Select(z => Math.Log(Step * Normal.Density(z)) + polynomials.Sum(p => Value(p, z)));
        return new(polynomials, samples.Sum(s => s.LogEvidence) + Elementary.LogSum([.. joint]));
    }

    /// <summary>The sample of curve <paramref name="own"/> given the frames of all curves.</summary>
    internal TermSample Share(TermSample sample, int own)
    {
        double[] logs =
        [
            .. sample.Ceilings.Select(z => _polynomials.Where((_, k) => k != own).Sum(p => Value(p, Math.Clamp(z, -Reach, Reach)))),
        ];
        var top = logs.Max();
        double[] weights = [.. sample.Draws.Select((d, i) => d.Weight * Math.Exp(logs[i] - top))];
        var total = weights.Sum();
        return sample with
        {
            Draws = [.. sample.Draws.Select((d, i) => d with { Weight = weights[i] / total })],
            Sampling = new(weights.Length, total * total / weights.Sum(w => w * w), ParetoTail.Shape(weights)),
        };
    }

    /// <summary>Coefficients a with ∫ φ exp Σ a_k z^k = 1 and the moments of the points, by Newton's method on the convex dual.</summary>
    private static double[] Polynomial(TermSample sample)
    {
        var moments = new double[Degree];
        for (var i = 0; i < sample.Ceilings.Length; i++)
        for (var k = 0; k < Degree; k++)
            moments[k] += sample.Draws[i].Weight * Math.Pow(Math.Clamp(sample.Ceilings[i], -Reach, Reach), k + 1);
        var a = new double[Degree + 1];
        var dual = Dual(a, moments);
        for (var step = 0; step < 100; step++)
        {
            var (gradient, curvature) = Slopes(a, moments);
            if (gradient.Max(Math.Abs) < 1e-10 || !Cholesky.Factor(curvature, Degree, 0))
                break;
            Cholesky.Forward(curvature, gradient);
            Cholesky.Back(curvature, gradient);
            for (var by = 1.0; by > 1e-6; by /= 2)
            {
                double[] next = [0, .. gradient.Select((g, k) => a[k + 1] - by * g)];
                if (Dual(next, moments) is var value && value <= dual)
                {
                    (a, dual) = (next, value);
                    break;
                }
            }
        }

        a[0] = -LogMass(a);
        return a;
    }

    private static double LogMass(double[] a) => Elementary.LogSum([.. Grid.Select(z => Math.Log(Step * Normal.Density(z)) + Value(a, z))]);

    private static double Dual(double[] a, double[] moments) => LogMass(a) - moments.Select((m, k) => a[k + 1] * m).Sum();

    private static (double[] Gradient, double[] Curvature) Slopes(double[] a, double[] moments)
    {
        var logMass = LogMass(a);
        var powers = new double[2 * Degree];
        foreach (var z in Grid)
        {
            var mass = Step * Normal.Density(z) * Math.Exp(Value(a, z) - logMass);
            for (var (k, power) = (0, z); k < powers.Length; k++, power *= z)
                powers[k] += mass * power;
        }

        var curvature = new double[Degree * Degree];
        for (var i = 0; i < Degree; i++)
        for (var j = 0; j < Degree; j++)
            curvature[i * Degree + j] = powers[i + j + 1] - powers[i] * powers[j];
        return ([.. moments.Select((m, k) => powers[k] - m)], curvature);
    }

    private static double Value(double[] a, double z)
    {
        var value = 0.0;
        for (var k = a.Length - 1; k >= 0; k--)
            value = value * z + a[k];
        return value;
    }
}
