using System.Collections.Immutable;

namespace Handhold.Photos;

/// <summary>What folders of photographs gave.</summary>
public sealed class PhotoImport
{
    private readonly ImmutableArray<MissingFrames> _missing;

    internal PhotoImport(
        ImmutableArray<Photo> photos,
        ImmutableArray<MissingFrames> missing,
        ImmutableArray<PhotoRemark> skipped,
        ImmutableArray<PhotoRemark> remarks
    ) => (Photos, _missing, Skipped, Remarks) = (photos, missing, skipped, remarks);

    /// <summary>The photographs that became frames, in byte order of their paths.</summary>
    public ImmutableArray<Photo> Photos { get; }

    /// <summary>Frames that were probably deleted before the import: their file numbers are missing.</summary>
    public int Missing => _missing.Sum(frames => frames.Count);

    /// <summary>What was not taken, and why.</summary>
    public ImmutableArray<PhotoRemark> Skipped { get; }

    /// <summary>What was taken but deserves a look.</summary>
    public ImmutableArray<PhotoRemark> Remarks { get; }

    /// <summary>The frames, a cell each, with the path as the column <c>photo</c>.</summary>
    /// <remarks>
    /// Missing frames count as not judged, at the speed and under the conditions of the photograph before them, so that answers say what they
    /// would be if these were all rejects. These, and the photographs of folders without rejects, have <c>likely</c> in the column
    /// <c>rejects_deleted</c>, and a fit of them says <see cref="StatusCode.FramesDeleted"/>; <c>no</c> there takes it back.
    /// </remarks>
    /// <param name="says">The conditions of a photograph, from what it recorded and what else is known; left out, as recorded.</param>
    /// <exception cref="CellException">The conditions contradict each other.</exception>
    public FrameTable ToTable(Func<Photo, Conditions>? says = null)
    {
        says ??= photo => photo.Frame.Conditions;
        var missing = _missing.ToLookup(frames => frames.Before, frames => frames.Count);
        return [.. Photos.SelectMany(photo => Cells(photo, says(photo), missing[photo].Sum()))];
    }

    /// <inheritdoc/>
    public override string ToString() =>
        $"{Of(Photos.Length, "photograph")} taken, {Of(Skipped.Length, "file")} not taken, {Of(Remarks.Length, "remark")}";

    private static IEnumerable<FrameCell> Cells(Photo photo, Conditions conditions, int missing)
    {
        var (keeper, judged) = (photo.Frame.Verdict == Verdict.Keeper, photo.Frame.Verdict != Verdict.NotJudged);
        yield return new(photo.Frame.Exposure, judged ? 1 : 0, keeper ? 1 : 0)
        {
            Unjudged = judged ? 0 : 1,
            Conditions = conditions.With("photo", photo.Path),
        };
        if (missing > 0)
            yield return new(photo.Frame.Exposure, 0, 0)
            {
                Unjudged = missing,
                Conditions = Survivors
                    .Marked(conditions with { BurstPosition = null, Order = null })
                    .With("photo", $"missing after {photo.Path}"),
            };
    }

    private static string Of(int count, string noun) => $"{count} {noun}{(count == 1 ? "" : "s")}";
}
