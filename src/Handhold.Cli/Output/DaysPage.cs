using System.Collections.Immutable;

namespace Handhold.Cli;

/// <summary>The luck of days, for people.</summary>
internal static class DaysPage
{
    public static void Write(Page page, ImmutableArray<DaysAnswer> answers)
    {
        foreach (var answer in answers)
        {
            CurveNotes.Heading(page, answer.Curve);
            page.Text(answer.Sentence);
            page.Blank();
            page.Table(["Day", "Keepers", "Its luck", Plain.Level(answer.Curve.Model.Level) + " interval"], answer.Days.Select(Row));
            page.Blank();
            CurveNotes.Write(page, answer.Curve, [.. answer.Curve.Statuses, .. answer.Statuses]);
        }

        Cautions.Write(page, answers.Select(a => a.Curve), []);
    }

    private static string[] Row(DayLuck day) =>
        [
            string.Join(" · ", new[] { day.Photographer, day.Session }.OfType<string>().DefaultIfEmpty("not recorded")),
            FormattableString.Invariant($"{day.Keepers} of {day.Frames}"),
            day.Stops.ToString(),
            $"{Plain.Change(day.Interval.Lower)} to {Plain.Change(day.Interval.Upper)}",
        ];
}
