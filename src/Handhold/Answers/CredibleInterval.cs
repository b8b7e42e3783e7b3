namespace Handhold;

/// <summary>Equal-tailed: the quantity lies below <see cref="Lower"/> with probability (1 - level)/2, above <see cref="Upper"/> with the same, given model, priors and data.</summary>
public sealed class CredibleInterval
{
    internal CredibleInterval(double lower, double upper, double level) => (Lower, Upper, Level) = (lower, upper, level);

    /// <summary>Lower end.</summary>
    public double Lower { get; }

    /// <summary>Upper end.</summary>
    public double Upper { get; }

    /// <summary>Probability inside, such as 0.95.</summary>
    public double Level { get; }
}
