namespace Handhold.Cli;

/// <summary>A file that is missing or holds what it must not.</summary>
internal sealed class InputException(Complaint complaint) : Exception($"{complaint.Message} {complaint.Remedy}")
{
    public Complaint Complaint { get; } = complaint;
}
