namespace Handhold.Curves;

/// <summary>A distribution known by weighted values.</summary>
internal sealed class WeightedValues
{
    private readonly double[] _values;
    private readonly double[] _middles; // weight below each value plus half its own

    /// <param name="weighted">Values and weights that add up to about one.</param>
    internal WeightedValues((double Value, double Weight)[] weighted)
    {
        Array.Sort(weighted, (a, b) => a.Value.CompareTo(b.Value));
        _values = Array.ConvertAll(weighted, w => w.Value);
        _middles = new double[weighted.Length];
        var (sum, total) = (0.0, weighted.Sum(w => w.Weight));
        for (var i = 0; i < weighted.Length; i++)
        {
            _middles[i] = (sum + 0.5 * weighted[i].Weight) / total;
            sum += weighted[i].Weight;
        }

        Mean = weighted.Sum(w => w.Weight * w.Value) / total;
        StandardDeviation = Math.Sqrt(weighted.Sum(w => w.Weight * (w.Value - Mean) * (w.Value - Mean)) / total);
    }

    internal double Mean { get; }

    internal double StandardDeviation { get; }

    /// <summary>What is said of a parameter: median, mean, sd and equal-tailed interval.</summary>
    internal ParameterSummary Summary(string name, double level, string prior, Lazy<double>? nodeChange = null) =>
        new(
            name,
            Quantile(0.5),
            Mean,
            StandardDeviation,
            new(Quantile((1 - level) / 2), Quantile((1 + level) / 2), level),
            prior,
            nodeChange
        );

    /// <summary>Share of the weight below a value.</summary>
    internal double Below(double value)
    {
        var i = Array.BinarySearch(_values, value);
        if (i < 0)
            i = ~i;
        return i == 0 ? 0
            : i == _values.Length ? 1
            : _middles[i];
    }

    /// <summary>The value below which a share p of the weight lies, straight between the middles of the steps.</summary>
    internal double Quantile(double p)
    {
        var i = Array.BinarySearch(_middles, p);
        if (i < 0)
            i = ~i;
        if (i == 0)
            return _values[0];
        if (i == _values.Length)
            return _values[^1];
        var width = _middles[i] - _middles[i - 1];
        return _values[i - 1] + (width > 0 ? (p - _middles[i - 1]) / width : 0) * (_values[i] - _values[i - 1]);
    }
}
