using System.Collections.Immutable;

namespace Handhold.Solvers;

/// <summary>Rows whose coefficients vary by the levels of groupings, nested or crossed.</summary>
/// <param name="Rows">Rows, equal ones of equal levels pooled, those of equal levels one after another.</param>
/// <param name="Effects">What varies.</param>
internal sealed record GroupedProblem(BinomialProblem Rows, ImmutableArray<LevelEffects> Effects)
{
    /// <summary>Numbers that describe all spreads.</summary>
    internal int Spreads => Effects.Sum(e => e.Spreads);

    /// <summary>The mean of a column over rows, weighted by frames.</summary>
    internal double Centre(int column)
    {
        var (sum, frames) = (0.0, 0.0);
        for (var i = 0; i < Rows.Rows; i++)
        {
            sum += Rows.Frames.Span[i] * Rows.Design.Span[i * Rows.Columns.Length + column];
            frames += Rows.Frames.Span[i];
        }
        return sum / frames;
    }

    /// <summary>Whether two rows have the same levels.</summary>
    internal bool IsLike(int one, int other) => Effects.All(e => e.LevelOf[one] == e.LevelOf[other]);

    /// <summary>Rows that share no level with others, one part after another, each of so many rows or the least that can be taken apart beyond.</summary>
    /// <remarks>Parts lie between rows where the levels of every grouping go on upwards: of nested groupings, between any two levels of the outermost.</remarks>
    internal ImmutableArray<(int First, GroupedProblem Part)> Parts(int rows)
    {
        int[][] least = [.. Effects.Select(e => LeastFrom(e.LevelOf))];
        var most = new int[Effects.Length];
        var (parts, first) = (ImmutableArray.CreateBuilder<(int, GroupedProblem)>(), 0);
        for (var i = 0; i < Rows.Rows; i++)
        {
            for (var t = 0; t < most.Length; t++)
                most[t] = Math.Max(most[t], Effects[t].LevelOf[i]);
            if (i + 1 < Rows.Rows && (i + 1 - first < rows || most.Where((level, t) => level >= least[t][i + 1]).Any()))
                continue;
            parts.Add((first, new(Rows.Slice(first, i + 1 - first), [.. Effects.Select(e => e.Slice(first, i + 1 - first))])));
            first = i + 1;
        }
        return parts.ToImmutable();
    }

    // The lowest level from each row on.
    private static int[] LeastFrom(ImmutableArray<int> levels)
    {
        int[] least = [.. levels];
        for (var i = least.Length - 2; i >= 0; i--)
            least[i] = Math.Min(least[i], least[i + 1]);
        return least;
    }

    /// <summary>The rows as clusters, where one intercept varies: an integral a level.</summary>
    internal ClusteredProblem Clustered()
    {
        int[] starts = [.. Enumerable.Range(0, Rows.Rows).Where(i => i == 0 || !IsLike(i, i - 1)), Rows.Rows];
        return new(Rows, [.. starts], [.. Enumerable.Repeat(1, starts.Length - 1)], Rows.Rows, Saturated());
    }

    /// <summary>Log-likelihood of the rates k/n.</summary>
    internal double Saturated()
    {
        var sum = 0.0;
        for (var i = 0; i < Rows.Rows; i++)
        {
            double frames = Rows.Frames.Span[i];
            sum += Part(Rows.Keepers.Span[i], frames) + Part(Rows.Frames.Span[i] - Rows.Keepers.Span[i], frames);
        }
        return sum;

        static double Part(double count, double frames) => count == 0 ? 0 : count * Math.Log(count / frames);
    }
}
