namespace Handhold.Kernels;

/// <summary>A = QR by modified Gram-Schmidt done twice, which leaves Q orthonormal to rounding whatever the condition of A.</summary>
/// <remarks>
/// A and Q are column-major, rows × columns; R is columns × columns, row-major, upper triangular with positive diagonal.
/// Source: Giraud, Langou, Rozložník and van den Eshof (2005), Numerische Mathematik 101, 87-100.
/// </remarks>
internal static class Orthonormal
{
    /// <summary>Replaces A by Q. A column within <paramref name="tolerance"/> of its length of the span of those before it becomes zero, as its row of R.</summary>
    /// <returns>How many columns became zero.</returns>
    internal static int Factor(Span<double> a, int rows, int columns, Span<double> r, double tolerance)
    {
        var dependent = 0;
        r.Clear();
        for (var j = 0; j < columns; j++)
        {
            var v = a.Slice(j * rows, rows);
            var length = Math.Sqrt(Dot(v, v));
            for (var pass = 0; pass < 2; pass++)
            {
                for (var k = 0; k < j; k++)
                {
                    var q = a.Slice(k * rows, rows);
                    var along = Dot(q, v);
                    r[k * columns + j] += along;
                    for (var i = 0; i < v.Length; i++)
                        v[i] -= along * q[i];
                }
            }
            var left = Math.Sqrt(Dot(v, v));
            if (!(left > tolerance * length))
            {
                v.Clear();
                dependent++;
                continue;
            }
            r[j * columns + j] = left;
            for (var i = 0; i < v.Length; i++)
                v[i] /= left;
        }
        return dependent;
    }

    /// <summary>Replaces x by R⁻¹ x; rows of R that are zero give zero.</summary>
    internal static void Solve(ReadOnlySpan<double> r, Span<double> x)
    {
        for (var i = x.Length - 1; i >= 0; i--)
        {
            var sum = x[i];
            for (var j = i + 1; j < x.Length; j++)
                sum -= r[i * x.Length + j] * x[j];
            x[i] = r[i * x.Length + i] == 0 ? 0 : sum / r[i * x.Length + i];
        }
    }

    /// <summary>Replaces x by R⁻ᵀ x.</summary>
    internal static void SolveTransposed(ReadOnlySpan<double> r, Span<double> x)
    {
        for (var i = 0; i < x.Length; i++)
        {
            var sum = x[i];
            for (var j = 0; j < i; j++)
                sum -= r[j * x.Length + i] * x[j];
            x[i] = r[i * x.Length + i] == 0 ? 0 : sum / r[i * x.Length + i];
        }
    }

    /// <summary>x·y.</summary>
    internal static double Dot(ReadOnlySpan<double> x, ReadOnlySpan<double> y)
    {
        var sum = 0.0;
        for (var i = 0; i < x.Length; i++)
            sum += x[i] * y[i];
        return sum;
    }
}
