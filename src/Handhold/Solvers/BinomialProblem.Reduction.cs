using System.Collections.Immutable;

namespace Handhold.Solvers;

public sealed partial record BinomialProblem
{
    // Every link's curve is exactly 0 or 1 there.
    private const double Far = 1e4;

    /// <summary>This problem with a contrast held: one column less, its part in the offsets.</summary>
    internal BinomialProblem Reduced(ImmutableArray<double> contrast, double value)
    {
        var pivot = Enumerable.Range(0, Columns.Length).MaxBy(j => Math.Abs(contrast[j]) * Length(j));
        int[] left = [.. Enumerable.Range(0, Columns.Length).Where(j => j != pivot)];
        var offset = new double[Rows];
        var design = new double[Rows * left.Length];
        for (var i = 0; i < Rows; i++)
        {
            var row = RowOf(i);
            var place = i * left.Length;
            offset[i] = (Offset.IsEmpty ? 0 : Offset.Span[i]) + row[pivot] * value / contrast[pivot];
            foreach (var j in left)
                design[place++] = row[j] - row[pivot] * contrast[j] / contrast[pivot];
        }
        return With([.. left.Select(j => Columns[j])], design, offset);
    }

    /// <summary>This problem with some rows at the end of their curve, keepers at the ceiling and rejects at the floor, and only some columns.</summary>
    internal BinomialProblem Settled(IReadOnlySet<int> rows, IReadOnlyList<int> columns)
    {
        var offset = new double[Rows];
        var design = new double[Rows * columns.Count];
        for (var i = 0; i < Rows; i++)
        {
            offset[i] = Offset.IsEmpty ? 0 : Offset.Span[i];
            if (rows.Contains(i))
                offset[i] = Keepers.Span[i] == 0 ? -Far : Far;
            else
                for (var k = 0; k < columns.Count; k++)
                    design[i * columns.Count + k] = RowOf(i)[columns[k]];
        }
        return With([.. columns.Select(j => Columns[j])], design, offset);
    }

    private BinomialProblem With(ImmutableArray<string> columns, double[] design, double[] offset) =>
        new(columns, design, Frames, Keepers)
        {
            Offset = offset,
            Link = Link,
            Ceiling = Ceiling,
            Floor = Floor,
        };

    private double Length(int column)
    {
        var sum = 0.0;
        for (var i = 0; i < Rows; i++)
            sum += RowOf(i)[column] * RowOf(i)[column];
        return Math.Sqrt(sum);
    }
}
