namespace Handhold;

/// <summary>A saved fit that cannot be read. The message names the place, what stands there, and what to do.</summary>
public sealed class SavedFitException : FormatException
{
    internal SavedFitException(string message, Exception? cause = null)
        : base(message, cause) { }
}
