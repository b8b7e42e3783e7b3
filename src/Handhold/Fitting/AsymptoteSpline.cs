using System.Collections.Immutable;
using Handhold.Curves;
using Handhold.Kernels;

namespace Handhold.Fitting;

/// <summary>Stretches of ceilings, or floors, between the nodes of their grid.</summary>
/// <remarks>The marginal is a spline through its logarithms; the rest of the posterior is interpolated between the four nodes around, so some shares are negative.</remarks>
internal static class AsymptoteSpline
{
    private const int CellsPerStep = 8;

    /// <param name="grid">The grid; null when the value is fixed.</param>
    /// <param name="value">Ceiling or floor of a loss.</param>
    /// <param name="marginal">First node and log weights.</param>
    internal static AsymptoteCells Cells(LossGrid? grid, Func<double, double> value, Func<(int First, double[] Logs)> marginal)
    {
        if (grid is null)
            return AsymptoteCells.None;
        var (first, logs) = marginal();
        SmoothMarginal smooth = new(0, 1, logs);
        var byNode = ImmutableDictionary.CreateBuilder<double, ImmutableArray<AsymptoteCell>>();
        for (var i = 0; i < logs.Length; i++)
        {
            var node = ImmutableArray.CreateBuilder<AsymptoteCell>();
            for (var k = -2 * CellsPerStep + 1; k < 2 * CellsPerStep; k++)
            {
                var from = k / (double)CellsPerStep;
                if (i + from < 0 || i + from > logs.Length - 1 || Cardinal(from) == 0)
                    continue;
                var share = Cardinal(from) / CellsPerStep * Math.Exp(smooth.LogDensity(i + from) - smooth.LogDensity(i));
                var (one, other) = (Value(i + from - 0.5 / CellsPerStep), Value(i + from + 0.5 / CellsPerStep));
                node.Add(new(share, Math.Min(one, other), Value(i + from), Math.Max(one, other)));
            }

            byNode[value(grid.Loss(grid.At(first + i)))] = node.ToImmutable();
        }

        return new(byNode.ToImmutable());

        double Value(double position) => value(grid.Loss(grid.At(first) + position * grid.Step));
    }

    /// <summary>Cubic interpolation at the four nodes around, seen from one of them.</summary>
    private static double Cardinal(double from) =>
        Math.Abs(from) is var d && d < 1 ? (1 - d) * (1 + d) * (2 - d) / 2 : (1 - d) * (2 - d) * (3 - d) / 6;
}
