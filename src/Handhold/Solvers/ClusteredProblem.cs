using System.Collections.Immutable;

namespace Handhold.Solvers;

/// <summary>Rows that come in clusters, whose frames share a luck that no column says.</summary>
/// <param name="Rows">Rows, cluster after cluster.</param>
/// <param name="Starts">The first row of each cluster, and one past the last row.</param>
/// <param name="Weights">How many clusters are like each.</param>
/// <param name="Cells">Rows of the saturated model: one for each cluster and row, one for all frames of equal rows that share no cluster.</param>
/// <param name="Saturated">Log-likelihood of the saturated model.</param>
internal sealed record ClusteredProblem(
    BinomialProblem Rows,
    ImmutableArray<int> Starts,
    ImmutableArray<int> Weights,
    int Cells,
    double Saturated
)
{
    internal int Clusters => Weights.Length;

    /// <summary>Most rows of one cluster.</summary>
    internal int Widest { get; } = Enumerable.Range(0, Weights.Length).Max(c => Starts[c + 1] - Starts[c]);

    /// <summary>Whether some cluster of several frames has keepers and rejects: if not, no luck is too large.</summary>
    internal bool AnyMixed { get; } =
        Enumerable
            .Range(0, Weights.Length)
            .Any(c =>
            {
                var (from, to) = (Starts[c], Starts[c + 1]);
                var kept = Enumerable.Range(from, to - from).Sum(i => (long)Rows.Keepers.Span[i]);
                return kept > 0 && kept < Enumerable.Range(from, to - from).Sum(i => (long)Rows.Frames.Span[i]);
            });

    /// <summary>The problem without some of its rows; its saturated model is not kept.</summary>
    internal ClusteredProblem Without(IReadOnlySet<int> rows)
    {
        var kept = Enumerable
            .Range(0, Clusters)
            .Select(c => (Rows: Enumerable.Range(Starts[c], Starts[c + 1] - Starts[c]).Where(i => !rows.Contains(i)).ToArray(), Weights[c]))
            .Where(cluster => cluster.Rows.Length > 0)
            .ToArray();
        int[] starts = [0, .. kept.Select(cluster => cluster.Rows.Length)];
        for (var c = 1; c < starts.Length; c++)
            starts[c] += starts[c - 1];
        return new(Rows.Without(rows), [.. starts], [.. kept.Select(cluster => cluster.Item2)], 0, double.NaN);
    }
}
