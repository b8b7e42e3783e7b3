namespace Handhold.Photos;

/// <summary>Tells files that can be opened from those that must not be.</summary>
internal static class OrdinaryFile
{
    /// <summary>Why a file is not opened; null where it may be. Opening a pipe would wait for ever, so nothing is opened that has no length.</summary>
    public static PhotoReason? Refusal(string path)
    {
        FileInfo file = new(path);
        if (!file.Exists)
            return PhotoReason.Vanished;
        if (!file.Attributes.HasFlag(FileAttributes.ReparsePoint))
            return file.Length == 0 ? PhotoReason.Empty : null;
        try
        {
            return file.ResolveLinkTarget(returnFinalTarget: true) is not FileInfo { Exists: true } target ? PhotoReason.Link
                : target.Length == 0 ? PhotoReason.Empty
                : null;
        }
        catch (IOException)
        {
            return PhotoReason.Link; // a circle of links
        }
    }
}
