namespace Handhold;

/// <summary>A confidence interval of a coefficient; an absent end is unbounded.</summary>
public sealed class CoefficientInterval
{
    internal CoefficientInterval(double? lower, double? upper, double level, string method) =>
        (Lower, Upper, Level, Method) = (lower, upper, level, method);

    /// <summary>Lower end; null is unbounded.</summary>
    public double? Lower { get; }

    /// <summary>Upper end; null is unbounded.</summary>
    public double? Upper { get; }

    /// <summary>Confidence, such as 0.95.</summary>
    public double Level { get; }

    /// <summary>How it was made: <c>profile</c>.</summary>
    public string Method { get; }
}
