namespace Handhold.Curves;

/// <summary>What more quadrature nodes would change, to first order: the covariance of a number with the change of the log density, at the first draws of a posterior.</summary>
/// <param name="draws">How many draws.</param>
/// <param name="changes">Change of the log density at each of them, block by block.</param>
internal sealed class NodeChange(int draws, Func<double[][]> changes)
{
    private readonly Lazy<double[][]> _changes = new(changes);

    /// <summary>By how many of its standard deviations the mean of a number moves; NaN where more nodes find no density. Computed when asked.</summary>
    /// <param name="values">The number at each draw.</param>
    /// <param name="weights">Weights of the draws, up to a factor.</param>
    /// <param name="ownBlock">The block that a level's number was drawn in, whose integral its weights do without; null for parameters.</param>
    internal Lazy<double> Of(ReadOnlySpan<double> values, ReadOnlySpan<double> weights, int? ownBlock)
    {
        var (some, weight) = (values[..draws].ToArray(), weights[..draws].ToArray());
        return new(() =>
        {
            double[] change = [.. _changes.Value.Select(blocks => blocks.Where((_, b) => b != ownBlock).Sum())];
            var (middle, mean) = (Mean(k => some[k]), Mean(k => change[k]));
            var variance = Mean(k => (some[k] - middle) * (some[k] - middle));
            return variance == 0 ? 0 : Mean(k => (some[k] - middle) * (change[k] - mean)) / Math.Sqrt(variance);
        });

        double Mean(Func<int, double> value) => Enumerable.Range(0, draws).Sum(k => weight[k] * value(k)) / weight.Sum();
    }
}
