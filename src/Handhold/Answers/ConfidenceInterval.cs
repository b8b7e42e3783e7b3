namespace Handhold;

/// <summary>An interval whose rule covers the truth in at least, or about, the stated share of repetitions.</summary>
public sealed class ConfidenceInterval
{
    internal ConfidenceInterval(double lower, double upper, double level, string method) =>
        (Lower, Upper, Level, Method) = (lower, upper, level, method);

    /// <summary>Lower end.</summary>
    public double Lower { get; }

    /// <summary>Upper end.</summary>
    public double Upper { get; }

    /// <summary>Confidence, such as 0.95.</summary>
    public double Level { get; }

    /// <summary>How it was made, such as <c>wilson</c>.</summary>
    public string Method { get; }
}
