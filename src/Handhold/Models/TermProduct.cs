namespace Handhold;

/// <summary>The product of two terms: the effect of one depends on the other.</summary>
/// <param name="First">A term, or <c>exposure</c>.</param>
/// <param name="Second">Another term, or <c>exposure</c>.</param>
public sealed record TermProduct(string First, string Second);
