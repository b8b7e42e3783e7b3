using Handhold.Kernels;

namespace Handhold.Solvers;

internal sealed partial class GroupedFit
{
    private readonly Lazy<GroupedModes> _modes;

    /// <summary>What the levels' effects are, given the spreads.</summary>
    internal GroupedModes Modes => _modes.Value;

    /// <summary>Λ of a grouping.</summary>
    internal ReadOnlySpan<double> Lambda(int grouping) => Top.AsSpan(SpreadsOf(grouping), Problem.Effects[grouping].Spreads);

    /// <summary>Of each effect of a grouping the share of independent unit normals, row-major: their covariance is L Lᵀ.</summary>
    internal double[] Loadings(int grouping) => Bases[grouping].Loadings(Lambda(grouping));

    /// <summary>The sd of one effect of a grouping, and its standard error: null where it is none.</summary>
    internal (double Spread, double? Error) SpreadOf(int grouping, int effect)
    {
        var (size, basis, at, all) = (Problem.Effects[grouping].Size, Bases[grouping].Weights, SpreadsOf(grouping), Top.Length);
        var loadings = Loadings(grouping).AsSpan(effect * size, size);
        var spread = Math.Sqrt(size == 1 ? loadings[0] * loadings[0] : loadings[0] * loadings[0] + loadings[1] * loadings[1]);
        if (spread == 0)
            return (0, null);
        // ds/dλ(r, c) = Bᵀ(effect, r) loading(c) / s
        var slope = new double[all];
        for (var (r, place) = (0, at); r < size; r++)
        for (var c = 0; c <= r; c++)
            slope[place++] = basis[r * size + effect] * loadings[c] / spread;
        var variance = Variance(slope);
        return (spread, variance > 0 ? Math.Sqrt(variance) : null);
    }

    /// <summary>What a row of the design has of the columns that vary by a grouping.</summary>
    internal double[] Part(int grouping, ReadOnlySpan<double> row)
    {
        var columns = Problem.Effects[grouping].Columns;
        return columns.Length == 1 ? [row[columns[0]]] : [row[columns[0]], row[columns[1]]];
    }

    /// <summary>a of a row: its loadings on a level's independent unit normals, whose squares add up to the variance between levels there.</summary>
    internal double[] Loading(int grouping, ReadOnlySpan<double> row)
    {
        var columns = Columns(grouping, row);
        var lambda = Lambda(grouping);
        return columns.Length == 1 ? [lambda[0] * columns[0]] : [lambda[0] * columns[0] + lambda[1] * columns[1], lambda[2] * columns[1]];
    }

    /// <summary>Adds a share of half the derivatives of a row's variance between levels, by the numbers of <see cref="Top"/>.</summary>
    internal void AddSlope(int grouping, ReadOnlySpan<double> row, double share, Span<double> slope)
    {
        var (columns, loading, place) = (Columns(grouping, row), Loading(grouping, row), SpreadsOf(grouping));
        for (var r = 0; r < columns.Length; r++)
        for (var c = 0; c <= r; c++)
            slope[place++] += share * loading[c] * columns[r];
    }

    /// <summary>What a row of the design has in the coordinates of a grouping's effects.</summary>
    internal double[] Columns(int grouping, ReadOnlySpan<double> row)
    {
        var (part, basis) = (Part(grouping, row), Bases[grouping].Weights);
        return [.. part.Select((_, r) => Orthonormal.Dot(basis.AsSpan().Slice(r * part.Length, part.Length), part))];
    }

    /// <summary>The linear predictor of a row for chosen levels; other groupings are at zero.</summary>
    internal double Predictor(ReadOnlySpan<double> row, ReadOnlySpan<(int Grouping, int Level)> levels)
    {
        var predictor = Orthonormal.Dot(row, Estimate.Coefficients.AsSpan());
        foreach (var (grouping, level) in levels)
            predictor += Orthonormal.Dot(Part(grouping, row), Modes.Effects(grouping, level).AsSpan());
        return predictor;
    }

    /// <summary>The variance of a contrast of the numbers of <see cref="Top"/>.</summary>
    internal double Variance(ReadOnlySpan<double> slope) => Covaries(slope, slope);

    /// <summary>The covariance of two contrasts of the numbers of <see cref="Top"/>.</summary>
    internal double Covaries(ReadOnlySpan<double> one, ReadOnlySpan<double> other)
    {
        var covariance = 0.0;
        for (var a = 0; a < one.Length; a++)
        for (var b = 0; b < other.Length; b++)
            covariance += one[a] * Covariance[a * one.Length + b] * other[b];
        return covariance;
    }

    /// <summary>The correlation of a level's two effects; null where one of them is none.</summary>
    internal double? Correlation(int grouping)
    {
        if (Problem.Effects[grouping].Size == 1 || Loadings(grouping) is not [var a, var b, var c, var d])
            return null;
        var product = Math.Sqrt((a * a + b * b) * (c * c + d * d));
        return product == 0 ? null : Math.Clamp((a * c + b * d) / product, -1, 1);
    }
}
