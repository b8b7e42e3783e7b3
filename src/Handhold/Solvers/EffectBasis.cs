using System.Collections.Immutable;

namespace Handhold.Solvers;

/// <summary>The coordinates in which the effects of a level are climbed: z̃ = B z for the columns z, so that effects b̃ there are b = Bᵀ b̃ on the columns; Λ, lower triangular, is the spread of b̃.</summary>
/// <remarks>Effects that correlate are told apart best at the centre of the data; the spread of one is held as the first entry of Λ.</remarks>
/// <param name="Weights">B, row-major.</param>
internal sealed record EffectBasis(ImmutableArray<double> Weights)
{
    internal int Size => Weights.Length == 1 ? 1 : 2;

    /// <summary>Height and slope at the centre of a column that varies beside the intercept; or the column alone.</summary>
    internal static EffectBasis Of(LevelEffects effects, double centre) => effects.Size == 1 ? Alone : new([1, 0, -centre, 1]);

    /// <summary>Coordinates of which the first is one effect as it stands.</summary>
    internal static EffectBasis First(LevelEffects effects, double centre, int effect) =>
        effects.Size == 1 ? Alone
        : effect == 1 ? new([-centre, 1, 1, 0])
        : centre == 0 ? new([1, 0, 0, 1])
        : new([1, -1 / centre, 0, 1 / centre]);

    private static EffectBasis Alone { get; } = new([1]);

    /// <summary>Bᵀ Λ, row-major: rows are the effects on the columns, each with its share of independent unit normals.</summary>
    internal double[] Loadings(ReadOnlySpan<double> lambda)
    {
        if (Size == 1)
            return [lambda[0]];
        return
        [
            Weights[0] * lambda[0] + Weights[2] * lambda[1],
            Weights[2] * lambda[2],
            Weights[1] * lambda[0] + Weights[3] * lambda[1],
            Weights[3] * lambda[2],
        ];
    }

    /// <summary>The Λ of these coordinates for loadings of the effects on the columns.</summary>
    internal double[] Lambda(ReadOnlySpan<double> loadings)
    {
        if (Size == 1)
            return [loadings[0]];
        var determinant = Weights[0] * Weights[3] - Weights[1] * Weights[2];
        // B⁻ᵀ times the loadings, then rotated into a lower triangle.
        var (a, b) = (
            (Weights[3] * loadings[0] - Weights[2] * loadings[2]) / determinant,
            (Weights[3] * loadings[1] - Weights[2] * loadings[3]) / determinant
        );
        var (c, d) = (
            (-Weights[1] * loadings[0] + Weights[0] * loadings[2]) / determinant,
            (-Weights[1] * loadings[1] + Weights[0] * loadings[3]) / determinant
        );
        var first = Math.Sqrt(a * a + b * b);
        return first == 0 ? [0, 0, Math.Sqrt(c * c + d * d)] : [first, (a * c + b * d) / first, (a * d - b * c) / first];
    }
}
