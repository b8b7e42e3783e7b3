namespace Handhold;

/// <summary>The burst luck that an answer assumed, and where it came from.</summary>
public sealed class LuckUsed
{
    internal LuckUsed(string kind, double value, string origin) => (Kind, Value, Origin) = (kind, value, origin);

    /// <summary><c>normal</c> (sd in stops), <c>beta-binomial</c> (correlation) or <c>none</c>.</summary>
    public string Kind { get; }

    /// <summary>Its size: posterior median of the burst sd in stops, or the correlation of two frames of a burst.</summary>
    public double Value { get; }

    /// <summary><c>estimated</c>, <c>assumed</c> or <c>given</c>.</summary>
    public string Origin { get; }
}
