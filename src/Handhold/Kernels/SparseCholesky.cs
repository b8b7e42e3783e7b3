namespace Handhold.Kernels;

/// <summary>M = L Lᵀ of a sparse symmetric positive definite matrix whose pattern stays, and the entries of M⁻¹ on the pattern of L; owns its memory.</summary>
/// <remarks>
/// Columns are eliminated as they come: put first what touches least. A column holds its diagonal, then the rows below it in ascending order; what elimination fills
/// in is found once. Time and memory are linear in the columns where each touches a bounded number of later ones, as in a forest. Sources: Davis (2006), Direct
/// Methods for Sparse Linear Systems, 4; for the inverse, Takahashi, Fagan and Chin (1973), as told by Erisman and Tinney (1975), Communications of the ACM 18, 177-179.
/// </remarks>
internal sealed class SparseCholesky
{
    private readonly int[] _starts;
    private readonly int[] _rows;
    private readonly double[] _column;

    /// <param name="size">Rows and columns.</param>
    /// <param name="pattern">Places below the diagonal that may differ from zero: row above column, in any order, repeated or not.</param>
    internal SparseCholesky(int size, IEnumerable<(int Row, int Column)> pattern)
    {
        var below = new SortedSet<int>[size];
        for (var j = 0; j < size; j++)
            below[j] = [];
        foreach (var (row, column) in pattern)
            below[column].Add(row);
        (_starts, _column) = (new int[size + 1], new double[size]);
        for (var j = 0; j < size; j++)
        {
            _starts[j + 1] = _starts[j] + 1 + below[j].Count;
            if (below[j].Count > 0)
                below[below[j].Min].UnionWith(below[j].Skip(1));
        }
        _rows = new int[_starts[size]];
        for (var j = 0; j < size; j++)
        {
            _rows[_starts[j]] = j;
            below[j].CopyTo(_rows, _starts[j] + 1);
        }
        (Values, Inverse) = (new double[_rows.Length], new double[_rows.Length]);
    }

    internal int Size => _starts.Length - 1;

    /// <summary>M before, L after <see cref="Factor"/>; entries at <see cref="Place"/>.</summary>
    internal double[] Values { get; }

    /// <summary>M⁻¹ after <see cref="Invert"/>, entries at <see cref="Place"/>.</summary>
    internal double[] Inverse { get; }

    /// <summary>Where the entry of a row and a column not above it is kept.</summary>
    internal int Place(int row, int column) => Array.BinarySearch(_rows, _starts[column], _starts[column + 1] - _starts[column], row);

    /// <summary>Replaces M by L.</summary>
    /// <returns>Whether M is positive definite.</returns>
    internal bool Factor()
    {
        for (var j = 0; j < Size; j++)
        {
            var (from, to) = (_starts[j], _starts[j + 1]);
            if (!(Values[from] > 0))
                return false;
            var root = Values[from] = Math.Sqrt(Values[from]);
            for (var a = from + 1; a < to; a++)
                Values[a] /= root;
            for (var b = from + 1; b < to; b++)
            {
                var place = _starts[_rows[b]];
                for (var a = b; a < to; a++)
                    Values[place = Find(place, _rows[a])] -= Values[a] * Values[b];
            }
        }
        return true;
    }

    /// <summary>The log determinant of M.</summary>
    internal double LogDeterminant()
    {
        var sum = 0.0;
        for (var j = 0; j < Size; j++)
            sum += Math.Log(Values[_starts[j]]);
        return 2 * sum;
    }

    /// <summary>Replaces x by M⁻¹ x.</summary>
    internal void Solve(Span<double> x)
    {
        for (var j = 0; j < Size; j++)
        {
            x[j] /= Values[_starts[j]];
            for (var a = _starts[j] + 1; a < _starts[j + 1]; a++)
                x[_rows[a]] -= Values[a] * x[j];
        }
        for (var j = Size - 1; j >= 0; j--)
        {
            for (var a = _starts[j] + 1; a < _starts[j + 1]; a++)
                x[j] -= Values[a] * x[_rows[a]];
            x[j] /= Values[_starts[j]];
        }
    }

    /// <summary>Finds the entries of M⁻¹ on the pattern of L, from the last column back.</summary>
    internal void Invert()
    {
        for (var j = Size - 1; j >= 0; j--)
        {
            var (from, to) = (_starts[j], _starts[j + 1]);
            _column.AsSpan(0, to - from).Clear();
            for (var b = from + 1; b < to; b++)
            {
                var place = _starts[_rows[b]];
                for (var a = b; a < to; a++)
                {
                    place = Find(place, _rows[a]);
                    _column[a - from] += Inverse[place] * Values[b];
                    if (a > b)
                        _column[b - from] += Inverse[place] * Values[a];
                }
            }
            var diagonal = 1 / Values[from];
            for (var a = from + 1; a < to; a++)
            {
                Inverse[a] = -_column[a - from] / Values[from];
                diagonal -= Inverse[a] * Values[a];
            }
            Inverse[from] = diagonal / Values[from];
        }
    }

    // From a place on, the row of the same column: it is there.
    private int Find(int place, int row)
    {
        while (_rows[place] != row)
            place++;
        return place;
    }
}
