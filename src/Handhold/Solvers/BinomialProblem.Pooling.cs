using Handhold.Kernels;

namespace Handhold.Solvers;

public sealed partial record BinomialProblem
{
    /// <summary>The problem without some of its rows.</summary>
    internal BinomialProblem Without(IReadOnlyCollection<int> rows) =>
        WithRows([.. Enumerable.Range(0, Rows).Except(rows).Select(i => (i, Frames.Span[i], Keepers.Span[i]))]);

    /// <summary>Rows of these columns, link and asymptotes with other counts.</summary>
    internal BinomialProblem WithRows(IReadOnlyCollection<(int Place, int Frames, int Keepers)> rows)
    {
        int[] places = [.. rows.Select(r => r.Place)];
        int[] frames = [.. rows.Select(r => r.Frames)];
        int[] keepers = [.. rows.Select(r => r.Keepers)];
        return WithRows(DesignOf(places), OffsetOf(places), frames, keepers);
    }

    /// <summary>Rows one after another, which are not copied.</summary>
    internal BinomialProblem Slice(int first, int rows) =>
        WithRows(
            Design.Slice(first * Columns.Length, rows * Columns.Length),
            Offset.IsEmpty ? default : Offset.Slice(first, rows),
            Frames.Slice(first, rows),
            Keepers.Slice(first, rows)
        );

    /// <summary>Equal rows made one, and the pooled row of each row.</summary>
    /// <param name="kinds">Of each row what it must share beside to be equal; null for nothing.</param>
    internal (BinomialProblem Pooled, int[] CellOf) Pool(int[]? kinds = null)
    {
        // The newest cell of a hash, and of each cell its first row and the cell before it with its hash.
        Dictionary<int, int> newest = new(Rows);
        List<(int Row, int Before)> first = new(Rows);
        var cellOf = new int[Rows];
        for (var i = 0; i < Rows; i++)
        {
            HashCode hash = default;
            hash.Add(kinds?[i]);
            foreach (var number in RowOf(i))
                hash.Add(number);
            var last = newest.GetValueOrDefault(hash.ToHashCode(), -1);
            var cell = last;
            while (cell >= 0 && !(SameRow(first[cell].Row, i) && kinds?[first[cell].Row] == kinds?[i]))
                cell = first[cell].Before;
            if (cell < 0)
            {
                newest[hash.ToHashCode()] = cell = first.Count;
                first.Add((i, last));
            }
            cellOf[i] = cell;
        }
        if (first.Count == Rows)
            return (this, cellOf);
        var (frames, keepers) = (new int[first.Count], new int[first.Count]);
        for (var i = 0; i < Rows; i++)
        {
            frames[cellOf[i]] = checked(frames[cellOf[i]] + Frames.Span[i]);
            keepers[cellOf[i]] += Keepers.Span[i];
        }
        int[] places = [.. first.Select(f => f.Row)];
        return (WithRows(DesignOf(places), OffsetOf(places), frames, keepers), cellOf);
    }

    /// <summary>The rows here that have the columns of some rows there.</summary>
    internal HashSet<int> Like(BinomialProblem there, IReadOnlyCollection<int> rows) =>
        [.. Enumerable.Range(0, Rows).Where(i => rows.Any(row => RowOf(i).SequenceEqual(there.RowOf(row))))];

    /// <summary>The linear predictor of a row.</summary>
    internal double Predictor(int row, ReadOnlySpan<double> coefficients) =>
        Orthonormal.Dot(RowOf(row), coefficients) + (Offset.IsEmpty ? 0 : Offset.Span[row]);

    /// <summary>Equal for rows with equal columns, offset and frames, and for no others.</summary>
    internal string Signature(int row) =>
        FormattableString.Invariant(
            $"{Frames.Span[row]} {(Offset.IsEmpty ? 0 : Offset.Span[row]):R} {string.Join(' ', RowOf(row).ToArray().Select(BitConverter.DoubleToInt64Bits))}"
        );

    private BinomialProblem WithRows(
        ReadOnlyMemory<double> design,
        ReadOnlyMemory<double> offset,
        ReadOnlyMemory<int> frames,
        ReadOnlyMemory<int> keepers
    ) =>
        new(Columns, design, frames, keepers)
        {
            Offset = offset,
            Link = Link,
            Ceiling = Ceiling,
            Floor = Floor,
        };

    private double[] DesignOf(IReadOnlyCollection<int> rows) => [.. rows.SelectMany(i => RowOf(i).ToArray())];

    private ReadOnlyMemory<double> OffsetOf(IReadOnlyCollection<int> rows) =>
        Offset.IsEmpty ? default : rows.Select(i => Offset.Span[i]).ToArray();

    private ReadOnlySpan<double> RowOf(int row) => Design.Span.Slice(row * Columns.Length, Columns.Length);

    private bool SameRow(int a, int b) => RowOf(a).SequenceEqual(RowOf(b)) && (Offset.IsEmpty || Offset.Span[a] == Offset.Span[b]);
}
