namespace Handhold.Photos;

/// <summary>Finds files of one frame, such as a raw file and its JPEG: same folder and name, same moment, same exposure. One of them stays.</summary>
internal static class Twins
{
    public static (List<Photo> Photos, List<PhotoRemark> Skipped, List<PhotoRemark> Remarks) Joined(IEnumerable<Photo> photos)
    {
        (List<Photo> Photos, List<PhotoRemark> Skipped, List<PhotoRemark> Remarks) joined = ([], [], []);
        foreach (var frame in photos.GroupBy(Frame))
        {
            var files = frame
                .OrderByDescending(photo => FileKinds.IsRaw(photo.Path))
                .ThenBy(photo => photo.Path, StringComparer.Ordinal)
                .ToArray();
            var first = files[0];
            foreach (var other in files[1..])
            {
                joined.Skipped.Add(new(other.Path, PhotoReason.SameFrame));
                var verdict = Mark.Joined(first.Frame.Verdict, other.Frame.Verdict);
                if (verdict is null)
                    joined.Remarks.Add(new(first.Path, PhotoReason.VerdictsDiffer));
                first = new(
                    first.Path,
                    first.Taken,
                    new(first.Frame.Exposure, verdict ?? Verdict.NotJudged) { Conditions = first.Frame.Conditions }
                );
            }

            joined.Photos.Add(first);
        }

        return joined;
    }

    private static (string, DateTime?, ShutterSpeed) Frame(Photo photo) =>
        (photo.Taken is null ? photo.Path : Path.ChangeExtension(photo.Path, null).ToUpperInvariant(), photo.Taken, photo.Frame.Exposure);
}
