namespace Handhold;

/// <summary>Plans that cannot be read. The message names the place, what stands there, and what to do.</summary>
public sealed class SavedPlansException : FormatException
{
    internal SavedPlansException(string message, Exception? cause = null)
        : base(message, cause) { }
}
