namespace Handhold;

/// <summary>Where a quantity lies. What the level means is the kind's: <see cref="CredibleInterval"/> or <see cref="ConfidenceInterval"/>.</summary>
public abstract class Interval
{
    private protected Interval(double lower, double upper, double level) => (Lower, Upper, Level) = (lower, upper, level);

    /// <summary>Lower end.</summary>
    public double Lower { get; }

    /// <summary>Upper end.</summary>
    public double Upper { get; }

    /// <summary>Probability inside, or confidence, such as 0.95.</summary>
    public double Level { get; }
}
