namespace Handhold.Curves;

/// <summary>What more quadrature nodes would change, to first order: the covariance of a number with the change of the log density, at the first draws of a posterior.</summary>
/// <param name="draws">How many draws.</param>
/// <param name="changes">Change of the log density at each of them.</param>
internal sealed class NodeChange(int draws, Func<double[]> changes)
{
    private readonly Lazy<double[]> _changes = new(changes);

    /// <summary>By how many of its standard deviations the mean of a number moves; weights up to a factor. Computed when asked.</summary>
    internal Lazy<double> Of(ReadOnlySpan<double> values, ReadOnlySpan<double> weights)
    {
        var (some, weight) = (values[..draws].ToArray(), weights[..draws].ToArray());
        return new(() =>
        {
            var (middle, mean) = (Mean(k => some[k]), Mean(k => _changes.Value[k]));
            var variance = Mean(k => (some[k] - middle) * (some[k] - middle));
            return variance > 0 ? Mean(k => (some[k] - middle) * (_changes.Value[k] - mean)) / Math.Sqrt(variance) : 0;
        });

        double Mean(Func<int, double> value) => Enumerable.Range(0, draws).Sum(k => weight[k] * value(k)) / weight.Sum();
    }
}
