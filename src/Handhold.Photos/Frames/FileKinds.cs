using System.Collections.Frozen;
using System.Collections.Immutable;

namespace Handhold.Photos;

/// <summary>What a file is by its name.</summary>
internal static class FileKinds
{
    private static readonly FrozenSet<string> s_pictures = new[] { ".jpg", ".jpeg", ".heic", ".heif", ".hif", ".tif", ".tiff" }.ToFrozenSet(
        StringComparer.OrdinalIgnoreCase
    );

    private static readonly FrozenSet<string> s_raws = new[]
    {
        ".3fr",
        ".arw",
        ".cr2",
        ".cr3",
        ".dng",
        ".nef",
        ".nrw",
        ".orf",
        ".pef",
        ".raf",
        ".rw2",
        ".srw",
    }.ToFrozenSet(StringComparer.OrdinalIgnoreCase);

    /// <summary>Endings of sidecars as cameras and programs write them.</summary>
    public static ImmutableArray<string> Sidecars { get; } = [".xmp", ".XMP"];

    public static bool IsPhotograph(string path) => IsRaw(path) || s_pictures.Contains(Path.GetExtension(path));

    public static bool IsRaw(string path) => s_raws.Contains(Path.GetExtension(path));

    public static bool IsSidecar(string path) => Path.GetExtension(path).Equals(".xmp", StringComparison.OrdinalIgnoreCase);
}
