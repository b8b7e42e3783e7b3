namespace Handhold.Photos;

/// <summary>A file that gives no frame, with the reason.</summary>
#pragma warning disable CA1064 // never leaves the package
internal sealed class NotTakenException(PhotoReason reason) : Exception(reason.ToString())
#pragma warning restore CA1064
{
    public PhotoReason Reason { get; } = reason;
}
