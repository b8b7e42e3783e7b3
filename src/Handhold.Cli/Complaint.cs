namespace Handhold.Cli;

/// <summary>One thing that is wrong, where it is, and what to do. Code, message and remedy are always there; the rest where it is known.</summary>
internal sealed record Complaint(string Code, string Message, string? Remedy = null)
{
    public string? File { get; init; }
    public int? Line { get; init; }
    public string? Column { get; init; }
    public string? Value { get; init; }
}
