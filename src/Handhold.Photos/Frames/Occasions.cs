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
        Photo? before = null;
        var session = "";
        Dictionary<string, (Photo Last, string Session, string Burst, int Position)> bursts = new(StringComparer.Ordinal);
        foreach (var (number, photo) in InOrder(photos).Index())
        {
            var (taken, setup) = (photo.Taken!.Value, photo.Frame.Conditions.Setup ?? "");
            session =
                options.SessionGap is null ? Text(taken, "yyyy-MM-dd")
                : before is null || Pause(before, photo) > options.SessionGap ? Text(taken, "yyyy-MM-dd HH:mm:ss")
                : session;
            var (burst, position) =
                bursts.TryGetValue(setup, out var latest) && latest.Session == session && !IsApart(latest.Last, photo)
                    ? (latest.Burst, latest.Position + 1)
                    : (Text(taken, "HH:mm:ss.FFFFFFF"), 1);
            (before, bursts[setup]) = (photo, (photo, session, burst, position));
            yield return photo.With(
                photo.Frame.Conditions with
                {
                    Session = session,
                    Order = number + 1,
                    Burst = burst,
                    BurstPosition = position,
                }
            );
        }

        foreach (var timeless in photos.Where(photo => photo.Taken is null))
            yield return timeless;
    }

    private static IEnumerable<Photo> InOrder(IEnumerable<Photo> photos) =>
        photos.Where(photo => photo.Taken is not null).OrderBy(photo => photo.Taken).ThenBy(photo => photo.Path, StringComparer.Ordinal);

    private bool IsApart(Photo one, Photo next) => Pause(one, next) > options.BurstGap * (1 + numbers.MissingBetween(one.Path, next.Path));

    private static TimeSpan Pause(Photo one, Photo next) =>
        next.Taken!.Value - one.Taken!.Value - TimeSpan.FromSeconds(Math.Min(one.Frame.Exposure.Seconds, TimeSpan.SecondsPerDay));

    private static string Text(DateTime time, string format) => time.ToString(format, CultureInfo.InvariantCulture);
}
