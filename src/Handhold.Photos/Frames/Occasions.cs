using System.Globalization;

namespace Handhold.Photos;

/// <summary>Gives each photograph its session, its burst with its place in it, and its order, all from the camera's clock.</summary>
/// <remarks>
/// A burst ends at a pause longer than the gap, counted from the end of one exposure to the start of the next, and at the end of its session or setup;
/// frames whose numbers are missing between the two lengthen the pause that is allowed, each by one gap.
/// It is named after the time of its first frame, a session after its day or, by gap, after the time of its first frame.
/// </remarks>
internal sealed class Occasions(PhotoOptions options, FileNumbers numbers)
{
    public IEnumerable<Photo> Named(IReadOnlyCollection<Photo> photos)
    {
        var inOrder = photos
            .Where(photo => photo.Taken is not null)
            .OrderBy(photo => photo.Taken)
            .ThenBy(photo => photo.Path, StringComparer.Ordinal);
        return photos.Where(photo => photo.Taken is null).Concat(InBursts([.. InSessions(inOrder)]));
    }

    private IEnumerable<Photo> InSessions(IEnumerable<Photo> inOrder)
    {
        Photo? before = null;
        var session = "";
        foreach (var (number, photo) in inOrder.Index())
        {
            if (options.SessionGap is null)
                session = Text(photo.Taken!.Value, "yyyy-MM-dd");
            else if (before is null || Pause(before, photo) > options.SessionGap)
                session = Text(photo.Taken!.Value, "yyyy-MM-dd HH:mm:ss");
            before = photo;
            yield return photo.With(photo.Frame.Conditions with { Session = session, Order = number + 1 });
        }
    }

    private IEnumerable<Photo> InBursts(List<Photo> inSessions)
    {
        foreach (var together in inSessions.GroupBy(photo => (photo.Frame.Conditions.Session, photo.Frame.Conditions.Setup)))
        {
            Photo? before = null;
            var (burst, position) = ("", 0);
            foreach (var photo in together)
            {
                (burst, position) =
                    before is null || IsApart(before, photo) ? (Text(photo.Taken!.Value, "HH:mm:ss.FFFFFFF"), 1) : (burst, position + 1);
                before = photo;
                yield return photo.With(photo.Frame.Conditions with { Burst = burst, BurstPosition = position });
            }
        }
    }

    private bool IsApart(Photo one, Photo next) => Pause(one, next) > options.BurstGap * (1 + numbers.MissingBetween(one.Path, next.Path));

    private static TimeSpan Pause(Photo one, Photo next) =>
        next.Taken!.Value - one.Taken!.Value - TimeSpan.FromSeconds(Math.Min(one.Frame.Exposure.Seconds, TimeSpan.SecondsPerDay));

    private static string Text(DateTime time, string format) => time.ToString(format, CultureInfo.InvariantCulture);
}
