using System.Collections.Immutable;

namespace Handhold.Photos;

/// <summary>Looks for signs that frames were deleted before the import, which makes keepers of those that are left look too frequent.</summary>
/// <remarks>
/// Two signs: file numbers missing between neighbours of a burst, and a folder whose judged frames are all keepers. In such a folder numbers
/// missing between neighbours of a session count as well.
/// </remarks>
internal sealed class Survivors
{
    /// <summary>Fewer keepers than these without a reject are no sign of anything.</summary>
    private const int FewestKeepers = 5;

    private const string Column = "rejects_deleted";

    private readonly FileNumbers _numbers;
    private readonly HashSet<string> _withoutRejects;

    private Survivors(IReadOnlyCollection<Photo> photos, FileNumbers numbers)
    {
        _numbers = numbers;
        _withoutRejects =
        [
            .. photos
                .GroupBy(photo => Folder(photo.Path))
                .Where(folder => folder.All(photo => photo.Frame.Verdict != Verdict.Reject))
                .Where(folder => folder.Count(photo => photo.Frame.Verdict == Verdict.Keeper) >= FewestKeepers)
                .Select(folder => folder.Key),
        ];
    }

    /// <summary>The photographs, those of folders without rejects marked so; the frames missing between them; and what to say.</summary>
    public static (ImmutableArray<Photo> Photos, ImmutableArray<MissingFrames> Missing, ImmutableArray<PhotoRemark> Remarks) Among(
        IReadOnlyCollection<Photo> photos,
        FileNumbers numbers
    )
    {
        Survivors survivors = new(photos, numbers);
        ImmutableArray<Photo> marked =
        [
            .. photos.Select(photo => survivors._withoutRejects.Contains(Folder(photo.Path)) ? Marked(photo) : photo),
        ];
        ImmutableArray<MissingFrames> missing = [.. survivors.Missing(marked)];
        return (
            marked,
            missing,
            [
                .. missing.Select(frames => new PhotoRemark(frames.Before.Path, PhotoReason.NumbersMissing)),
                .. survivors._withoutRejects.Select(folder => new PhotoRemark(folder, PhotoReason.NoRejects)),
            ]
        );
    }

    /// <summary>Conditions that say that rejects were probably deleted, unless they say already whether.</summary>
    public static Conditions Marked(Conditions conditions) => conditions[Column] is null ? conditions.With(Column, "likely") : conditions;

    private static Photo Marked(Photo photo) => photo.With(Marked(photo.Frame.Conditions));

    private IEnumerable<MissingFrames> Missing(IEnumerable<Photo> photos) =>
        from together in photos
            .Where(photo => photo.Taken is not null)
            .GroupBy(photo => (photo.Frame.Conditions.Session, photo.Frame.Conditions.Setup))
        let inOrder = together.OrderBy(photo => photo.Frame.Conditions.Order).ToArray()
        from pair in inOrder.Zip(inOrder.Skip(1))
        where
            pair.First.Frame.Conditions.Burst == pair.Second.Frame.Conditions.Burst
            || (_withoutRejects.Contains(Folder(pair.First.Path)) && Folder(pair.First.Path) == Folder(pair.Second.Path))
        let count = _numbers.MissingBetween(pair.First.Path, pair.Second.Path)
        where count > 0
        select new MissingFrames(pair.First, count);

    private static string Folder(string path) => path.LastIndexOf('/') is var end and > 0 ? path[..end] : ".";
}
