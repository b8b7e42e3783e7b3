using System.Collections.Immutable;
using System.Globalization;

namespace Handhold.Plots;

/// <summary>Everything a picture of the luck of days shows.</summary>
internal sealed record DaysScene(PictureWords Words, ImmutableArray<DayPoint> Days, Palette Palette)
{
    public static DaysScene Of(DaysAnswer answer, PictureOptions options)
    {
        ImmutableArray<DayPoint> days =
        [
            .. answer
                .Days.OrderBy(d => d.Session, StringComparer.Ordinal)
                .Select(d => new DayPoint(
                    string.Join('\n', new[] { d.Session ?? "not recorded", d.Photographer }.OfType<string>().Take(Names(answer))),
                    d.Stops.Value,
                    d.Interval.Lower,
                    d.Interval.Upper
                )),
        ];
        return new DaysScene(
            new PictureWords(
                options.Title ?? Finding(answer),
                PictureWords.Name(answer.Curve),
                [
                    CurveWords.Data(answer.Curve),
                    $"Up: slower speeds would do that day. Bars: {CurveWords.Percent(answer.Curve.Model.Level)} intervals of the day's luck. {answer.Sentence}",
                ],
                "Luck of each day, in stops. " + string.Join(" ", days.Select(d => $"{d.Name.Replace('\n', ' ')}: {Said(d)}."))
            ),
            days,
            Palette.Of(options.Theme)
        );
    }

    /// <summary>"−0.4 (−1.0 to +0.1)".</summary>
    public static string Said(DayPoint day) =>
        $"{CurveWords.Signed(day.Stops)} ({CurveWords.Signed(day.Lower)} to {CurveWords.Signed(day.Upper)})";

    /// <summary>A photographer is named only where there are several.</summary>
    private static int Names(DaysAnswer answer) => answer.Days.Select(d => d.Photographer).Distinct().Count() > 1 ? 2 : 1;

    private static string Finding(DaysAnswer answer)
    {
        if (answer.Trend is not { } trend)
        {
            return answer.Days.Length == 1 ? "One day shows neither luck nor progress"
                : answer.AreInOrder ? "Whether the days show progress cannot be told"
                : "Days without order show no progress";
        }

        var size = Math.Abs(trend.Stops.Value).ToString("0.0", CultureInfo.InvariantCulture);
        return !trend.IsTold ? $"{CurveWords.Count(answer.Days.Length, "day")} tell no progress from luck"
            : trend.Stops.Value > 0 ? $"From {trend.First} to {trend.Last}, speeds {size} stops slower became possible"
            : $"From {trend.First} to {trend.Last}, speeds {size} stops faster became necessary";
    }
}
