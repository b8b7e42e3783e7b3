using System.Collections.Immutable;

namespace Handhold.Curves;

/// <summary>The distribution of a quantity that is, within each atom, the half point plus a constant.</summary>
internal sealed class HalfPointMixture
{
    private readonly ImmutableArray<CurveAtom> _atoms;
    private readonly double[]? _shifts;

    /// <param name="atoms">The posterior's parts.</param>
    /// <param name="shifts">Constant added in each atom, log2 seconds; minus infinity puts the atom below everything. Null: none.</param>
    internal HalfPointMixture(ImmutableArray<CurveAtom> atoms, double[]? shifts = null) => (_atoms, _shifts) = (atoms, shifts);

    /// <summary>P(quantity at most <paramref name="t"/>).</summary>
    internal double Cdf(double t)
    {
        var sum = 0.0;
        for (var i = 0; i < _atoms.Length; i++)
        {
            var shift = _shifts?[i] ?? 0;
            sum += _atoms[i].Weight * (double.IsNegativeInfinity(shift) ? 1 : _atoms[i].HalfPoint.Cdf(t - shift));
        }

        return Math.Min(sum, 1);
    }

    /// <summary>The value below which the quantity lies with probability <paramref name="p"/>; minus infinity when that much lies below everything.</summary>
    internal double Quantile(double p)
    {
        var (low, high) = (double.PositiveInfinity, double.NegativeInfinity);
        var never = 0.0;
        for (var i = 0; i < _atoms.Length; i++)
        {
            var shift = _shifts?[i] ?? 0;
            if (double.IsNegativeInfinity(shift))
            {
                never += _atoms[i].Weight;
                continue;
            }

            low = Math.Min(low, _atoms[i].HalfPoint.Start + shift);
            high = Math.Max(high, _atoms[i].HalfPoint.Position(_atoms[i].HalfPoint.Density.Length - 1) + shift);
        }

        if (p <= never || low > high)
            return double.NegativeInfinity;
        var (below, above) = (Cdf(low) - p, Cdf(high) - p);
        for (var i = 0; i < 200 && high - low > 1e-12 * (1 + Math.Abs(low) + Math.Abs(high)); i++)
        {
            // Regula falsi from the side that lags, bisection every third time.
            var at = i % 3 == 2 || above <= below ? (low + high) / 2 : low - below * (high - low) / (above - below);
            var value = Cdf(at) - p;
            if (value == 0)
                return at;
            if (value < 0)
                (low, below) = (at, value);
            else
                (high, above) = (at, value);
        }

        return (low + high) / 2;
    }
}
