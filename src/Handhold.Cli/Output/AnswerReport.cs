using System.Collections.Immutable;
using System.Globalization;

namespace Handhold.Cli;

/// <summary>Answers of one curve, for people.</summary>
internal static class AnswerReport
{
    public static void Write(Page page, KeeperCurve curve, ImmutableArray<Answer> answers)
    {
        CurveNotes.Heading(page, curve);
        foreach (var answer in answers)
            page.Text(answer.Sentence + Split(answer) + Missing(answer));
        page.Blank();
        page.Table(Header(answers[0]), answers.Select(Row));
        page.Blank();
        CurveNotes.Write(page, curve, [.. curve.Statuses, .. answers.SelectMany(a => a.Statuses.Where(s => s.Message != a.Sentence))]);
    }

    private static string Split(Answer answer) => answer is FramesNeededAnswer { SplitSentence: { } instead } ? " " + instead : "";

    /// <summary>Where frames were not judged: what the answer would be if they were all rejects, unless a status says so.</summary>
    private static string Missing(Answer answer) =>
        answer.AsRejects is not { } rejects || answer.Statuses.Any(s => s.Code == StatusCode.RestsOnMissing) ? ""
        : rejects.Sentence == answer.Sentence ? " The frames not judged do not change this, were they all rejects."
        : $" Were the frames not judged all rejects: {char.ToLowerInvariant(rejects.Sentence[0])}{rejects.Sentence[1..]}";

    private static string[] Header(Answer answer)
    {
        var interval = Plain.Level(answer.Curve.Model.Level) + " interval";
        return answer switch
        {
            RateAnswer { Curve.Linear: not null } => ["Speed", "Estimated rate", interval],
            RateAnswer => ["Speed", "Chance of one frame", "Median rate", interval, "Keepers here"],
            ExposureAnswer => ["Wanted rate", "Exposure", interval],
            SlowestAnswer => ["Wanted", "Slowest mark", "Assurance there", "Slowest tested"],
            FramesNeededAnswer => ["Speed", "Keepers", "Frames", "Shot in", "Assurance", "Chance of one frame", "Luck of a burst"],
            _ => [],
        };
    }

    private static string[] Row(Answer answer) =>
        answer switch
        {
            RateAnswer { Curve.Linear: not null } a =>
            [
                a.At.ToString(),
                a.Rate is { } rate ? Plain.Percent(rate.Mean) : "not given",
                a.Rate is { } known ? Plain.Percents(known.Interval) : "",
            ],
            RateAnswer a => [a.At.ToString(), .. Rate(a.Rate), Seen(a.Curve.Data, a.At)],
            ExposureAnswer a => [Plain.Level(a.Rate), a.Exposure is { } exposure ? Plain.Speed(exposure) : "not given", Plain.Set(a.Set)],
            SlowestAnswer a =>
            [
                a.Wanted,
                a.Shutter?.ToString() ?? "none",
                a.Assurance is { } assurance ? Plain.Percent(assurance) : "",
                a.Curve.Data.Slowest.ToString(),
            ],
            FramesNeededAnswer a =>
            [
                a.At.ToString(),
                a.Keepers.ToString(CultureInfo.InvariantCulture),
                a.Frames?.ToString(CultureInfo.InvariantCulture) ?? "none",
                Plain.Bursts(a.Bursts),
                a.Rate is null ? "" : Plain.Percent(a.Assurance),
                a.Rate is { } rate ? Plain.Percent(rate.Mean) : "",
                Plain.Luck(a.Luck),
            ],
            _ => [],
        };

    private static string[] Rate(RateEstimate? rate) =>
        rate is null ? ["not given", "", ""] : [Plain.Percent(rate.Mean), Plain.Percent(rate.Median), Plain.Percents(rate.Interval)];

    private static string Seen(CurveData data, ShutterSpeed at) =>
        data.Speeds.FirstOrDefault(s => s.Exposure.IsSameSpeed(at)) is { } speed
            ? string.Create(CultureInfo.InvariantCulture, $"{speed.Keepers} of {speed.Frames}")
            : "not tested";
}
