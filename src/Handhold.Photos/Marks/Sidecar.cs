namespace Handhold.Photos;

/// <summary>Reads the sidecar of a photograph.</summary>
internal static class Sidecar
{
    /// <summary>Null where it cannot be read or is larger than any sidecar.</summary>
    public static Mark? Read(string path)
    {
        try
        {
            if (OrdinaryFile.Refusal(path) is not null)
                return null;
            using var file = File.OpenHandle(path, share: FileShare.ReadWrite | FileShare.Delete);
            var length = RandomAccess.GetLength(file);
            if (length > XmpMark.LongestSidecar)
                return null;
            var packet = new byte[length];
            var filled = 0;
            while (filled < packet.Length && RandomAccess.Read(file, packet.AsSpan(filled), filled) is var read and > 0)
                filled += read;
            return XmpMark.Of(packet[..filled]);
        }
        catch (Exception failure) when (failure is IOException or UnauthorizedAccessException or NotSupportedException)
        {
            return null;
        }
    }
}
