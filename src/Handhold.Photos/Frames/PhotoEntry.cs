namespace Handhold.Photos;

/// <summary>A photograph to be read.</summary>
/// <param name="Path">Where it lies.</param>
/// <param name="Shown">How its path is shown.</param>
/// <param name="Sidecar">Its sidecar, if there is one.</param>
internal sealed record PhotoEntry(string Path, string Shown, string? Sidecar);
