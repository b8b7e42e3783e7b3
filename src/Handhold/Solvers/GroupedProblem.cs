using System.Collections.Immutable;

namespace Handhold.Solvers;

/// <summary>Rows whose coefficients vary by the levels of groupings, nested or crossed.</summary>
/// <param name="Rows">Rows, equal ones of equal levels pooled.</param>
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

    /// <summary>The rows as clusters, where one intercept varies: an integral a level.</summary>
    internal ClusteredProblem Clustered()
    {
        var levels = Effects[0].LevelOf;
        int[] order = [.. Enumerable.Range(0, Rows.Rows).OrderBy(i => levels[i])];
        var starts = new int[Effects[0].Levels + 1];
        foreach (var level in levels)
            starts[level + 1]++;
        for (var c = 1; c < starts.Length; c++)
            starts[c] += starts[c - 1];
        var rows = Rows.WithRows([.. order.Select(i => (i, Rows.Frames.Span[i], Rows.Keepers.Span[i]))]);
        return new(rows, [.. starts], [.. Enumerable.Repeat(1, starts.Length - 1)], Rows.Rows, Saturated());
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
