using System.Collections.Immutable;

namespace Handhold.Photos;

/// <summary>What folders of photographs gave.</summary>
public sealed class PhotoImport
{
    internal PhotoImport(ImmutableArray<Photo> photos, ImmutableArray<PhotoRemark> skipped, ImmutableArray<PhotoRemark> remarks) =>
        (Photos, Skipped, Remarks) = (photos, skipped, remarks);

    /// <summary>The photographs that became frames, in byte order of their paths.</summary>
    public ImmutableArray<Photo> Photos { get; }

    /// <summary>What was not taken, and why.</summary>
    public ImmutableArray<PhotoRemark> Skipped { get; }

    /// <summary>What was taken but deserves a look.</summary>
    public ImmutableArray<PhotoRemark> Remarks { get; }

    /// <summary>The frames, one cell each, with the path as the column <c>photo</c>.</summary>
    public FrameTable ToTable() =>
        FrameTable.FromFrames(Photos.Select(photo => photo.Frame with { Conditions = photo.Frame.Conditions.With("photo", photo.Path) }));

    /// <inheritdoc/>
    public override string ToString() =>
        $"{Of(Photos.Length, "photograph")} taken, {Of(Skipped.Length, "file")} not taken, {Of(Remarks.Length, "remark")}";

    private static string Of(int count, string noun) => $"{count} {noun}{(count == 1 ? "" : "s")}";
}
