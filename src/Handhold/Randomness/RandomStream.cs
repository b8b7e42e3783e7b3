namespace Handhold.Randomness;

/// <summary>A stream of draws. For one thread at a time; give each replicate a stream of its own.</summary>
public sealed class RandomStream
{
    private readonly ulong _key;
    private readonly ulong _index;
    private ulong _block;
    private ulong? _left;

    internal RandomStream(ulong key, ulong index) => (_key, _index) = (key, index);

    /// <summary>64 uniform bits.</summary>
    public ulong Bits()
    {
        if (_left is { } left)
        {
            _left = null;
            return left;
        }
        var (first, second) = Philox.Block(_block++, _index, _key);
        _left = second;
        return first;
    }

    /// <summary>Uniform strictly between 0 and 1: an odd multiple of 2^-53, from the 52 upper bits of <see cref="Bits"/>.</summary>
    public double Uniform() => ((Bits() >> 12) + 0.5) * (1.0 / (1UL << 52));

    /// <summary>Normal with mean 0 and standard deviation 1.</summary>
    /// <remarks>sqrt(-2 log u) cos(2 pi v), u and v uniform. Source: Box and Muller (1958), Annals of Mathematical Statistics 29, 610-611.</remarks>
    public double Normal()
    {
        var radius = Math.Sqrt(-2 * Math.Log(Uniform()));
        return radius * Math.Cos(2 * Math.PI * Uniform());
    }

    /// <summary>Gamma with scale 1.</summary>
    /// <remarks>
    /// For a shape of at least 1, d v with v = (1 + z / sqrt(9 d))^3, d = shape - 1/3, z normal, kept when log u is below
    /// z^2 / 2 + d - d v + d log v. A smaller shape a is gamma(a + 1) u^(1/a).
    /// Source: Marsaglia and Tsang (2000), ACM Transactions on Mathematical Software 26, 363-372.
    /// </remarks>
    /// <param name="shape">Shape, positive.</param>
    /// <exception cref="ArgumentOutOfRangeException">The shape is not positive and finite.</exception>
    public double Gamma(double shape)
    {
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(shape);
        ArgumentOutOfRangeException.ThrowIfEqual(double.IsFinite(shape), false, nameof(shape));
        if (shape < 1)
        {
            return Gamma(shape + 1) * Math.Pow(Uniform(), 1 / shape);
        }
        var d = shape - 1.0 / 3;
        while (true)
        {
            var z = Normal();
            var root = 1 + z / Math.Sqrt(9 * d);
            if (root <= 0)
            {
                continue;
            }
            var v = root * root * root;
            if (Math.Log(Uniform()) < z * z / 2 + d - d * v + d * Math.Log(v))
            {
                return d * v;
            }
        }
    }

    /// <summary>Beta: X / (X + Y), X and Y gamma.</summary>
    /// <param name="a">First shape, positive.</param>
    /// <param name="b">Second shape, positive.</param>
    /// <exception cref="ArgumentOutOfRangeException">A shape is not positive and finite.</exception>
    public double Beta(double a, double b)
    {
        var x = Gamma(a);
        return x / (x + Gamma(b));
    }

    /// <summary>True with this probability.</summary>
    /// <param name="probability">From 0 to 1.</param>
    public bool Happens(double probability) => Uniform() < probability;
}
