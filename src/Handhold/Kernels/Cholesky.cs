namespace Handhold.Kernels;

/// <summary>M = L Lᵀ of a small symmetric matrix, row-major.</summary>
internal static class Cholesky
{
    /// <summary>Replaces the lower triangle of M by L.</summary>
    /// <returns>Whether M is positive definite: every pivot above <paramref name="least"/>.</returns>
    internal static bool Factor(Span<double> m, int size, double least)
    {
        for (var j = 0; j < size; j++)
        {
            for (var i = j; i < size; i++)
            {
                var sum = m[i * size + j];
                for (var k = 0; k < j; k++)
                    sum -= m[i * size + k] * m[j * size + k];
                if (i == j && !(sum > least))
                    return false;
                m[i * size + j] = i == j ? Math.Sqrt(sum) : sum / m[j * size + j];
            }
        }
        return true;
    }

    /// <summary>Replaces x by L⁻¹ x.</summary>
    internal static void Forward(ReadOnlySpan<double> l, Span<double> x)
    {
        for (var i = 0; i < x.Length; i++)
        {
            for (var k = 0; k < i; k++)
                x[i] -= l[i * x.Length + k] * x[k];
            x[i] /= l[i * x.Length + i];
        }
    }

    /// <summary>Replaces x by L⁻ᵀ x.</summary>
    internal static void Back(ReadOnlySpan<double> l, Span<double> x)
    {
        for (var i = x.Length - 1; i >= 0; i--)
        {
            for (var k = i + 1; k < x.Length; k++)
                x[i] -= l[k * x.Length + i] * x[k];
            x[i] /= l[i * x.Length + i];
        }
    }
}
