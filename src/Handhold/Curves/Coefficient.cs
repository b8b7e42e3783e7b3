namespace Handhold;

/// <summary>One coefficient of a linear predictor, on the scale of the link and of the raw column.</summary>
public sealed class Coefficient
{
    internal Coefficient(string name, double? estimate, double? standardError, CoefficientInterval interval) =>
        (Name, Estimate, StandardError, Interval) = (name, estimate, standardError, interval);

    /// <summary>Name: <c>intercept</c>, <c>log2Exposure</c>, a term such as <c>focal</c> or <c>sex=M</c>, or a product such as <c>log2Exposure×sex=M</c>.</summary>
    public string Name { get; }

    /// <summary>The estimate; null where the likelihood has no finite one, and the curve's statuses say so.</summary>
    public double? Estimate { get; }

    /// <summary>Its standard error: from the inverse observed information (likelihood), or the inverse expected information without the penalty (bias-reduced).</summary>
    public double? StandardError { get; }

    /// <summary>The values that a (penalised) likelihood-ratio test does not reject.</summary>
    public CoefficientInterval Interval { get; }
}
