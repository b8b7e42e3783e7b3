namespace Handhold;

/// <summary>An interval whose rule covers the truth in at least, or about, the stated share of repetitions.</summary>
public sealed class ConfidenceInterval : Interval
{
    internal ConfidenceInterval(double lower, double upper, double level, string method)
        : base(lower, upper, level) => Method = method;

    /// <summary>How it was made, such as <c>wilson</c> or <c>profile</c>.</summary>
    public string Method { get; }
}
