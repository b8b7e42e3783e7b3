namespace Handhold;

/// <summary>A situation that the reader of a result should know: a stable code and a plain sentence.</summary>
public sealed class Status
{
    internal Status(StatusCode code, string message) => (Code, Message) = (code, message);

    /// <summary>The stable code.</summary>
    public StatusCode Code { get; }

    /// <summary>What it means here, and what to do.</summary>
    public string Message { get; }

    /// <summary>The sentence.</summary>
    public override string ToString() => Message;
}
