namespace Handhold.Cli;

/// <summary>The command line cannot be followed.</summary>
internal sealed class UsageException(string message, string remedy, string? value = null) : Exception($"{message} {remedy}")
{
    public Complaint Complaint { get; } = new("wrongUsage", message, remedy) { Value = value };
}
