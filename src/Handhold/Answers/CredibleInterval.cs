namespace Handhold;

/// <summary>Equal-tailed: the quantity lies below the lower end with probability (1 - level)/2, above the upper with the same, given model, priors and data.</summary>
public sealed class CredibleInterval : Interval
{
    internal CredibleInterval(double lower, double upper, double level)
        : base(lower, upper, level) { }
}
