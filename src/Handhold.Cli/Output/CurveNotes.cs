using System.Collections.Immutable;
using System.Globalization;
using Handhold.Diagnostics;

namespace Handhold.Cli;

/// <summary>What stands beside every answer: whose it is, and what it rests on.</summary>
internal static class CurveNotes
{
    /// <summary>The curve's name, where there is something to tell apart.</summary>
    public static void Heading(Page page, KeeperCurve curve)
    {
        if (!curve.Key.Values.IsEmpty)
            page.Text(curve.Key.ToString());
    }

    /// <summary>Whether checks cost as much as the fit: a posterior in which levels vary.</summary>
    public static bool IsCheckDear(KeeperCurve curve) => curve.Linear is null && !curve.Model.Varies.IsEmpty;

    /// <summary>How well the curve fits, and what it hangs on, in one line.</summary>
    public static void Checks(Page page, KeeperCurve curve)
    {
        if (curve.Check().Sentence is { Length: > 0 } sentence)
            page.Text(sentence);
    }

    /// <summary>Counts, criterion and estimator, then everything to mind, each once.</summary>
    public static void Write(Page page, KeeperCurve curve, IEnumerable<Status> statuses)
    {
        page.Text($"Rests on {Counts(curve.Data)}.");
        Basis(page, curve, statuses);
    }

    /// <summary>Criterion and estimator, then everything to mind, each once.</summary>
    public static void Basis(Page page, KeeperCurve curve, IEnumerable<Status> statuses)
    {
        page.Text(
            $"{Judged(curve.Data.Criterion)}{Allowing(curve.Model.Judging)}. Estimator: {curve.Estimator}, {(curve.Linear is null ? curve.Model.Priors.Version : Independent(curve))}, {Plain.Level(curve.Model.Level)} intervals."
        );
        Mind(page, statuses);
        page.Blank();
    }

    private static string Independent(KeeperCurve curve) =>
        $"{curve.Model.Link.ToString().ToLowerInvariant()} link, {(curve.Linear!.Luck is not null ? "frames of a burst share luck" : curve.Linear.Nodes is null ? "frames taken as independent" : "levels that vary fitted together")}";

    /// <summary>What the luck of a burst means for its frames, as rows of a table.</summary>
    public static IEnumerable<string[]> Alike(KeeperCurve curve, ExposureAnswer half, AnswerOptions options)
    {
        if (half.Exposure is { } exposure && curve.BurstCorrelation(exposure, options) is { } correlation and > 0)
            yield return
            [
                "Two frames of a burst",
                string.Create(CultureInfo.InvariantCulture, $"correlated by {correlation:0.00} at that speed"),
                "",
            ];
    }

    /// <summary>Each once; why numbers are approximate by the first reason.</summary>
    public static void Mind(Page page, IEnumerable<Status> statuses)
    {
        foreach (var status in statuses.DistinctBy(s => s.Code == StatusCode.Approximate ? "" : s.Message))
            page.Text(status.Message, mark: "Mind: ");
    }

    public static string Counts(CurveData data) =>
        Frames(data.Speeds)
        + $", {Sessions(data.Sessions, areRecorded: !data.SessionLabels.IsEmpty)}"
        + (data.Bursts > 0 ? $", {Plain.Of(data.Bursts, "burst")}" : "")
        + NotJudged(data.Unjudged);

    /// <summary>Without labels, frames of one photographer are taken as one session.</summary>
    private static string Sessions(int count, bool areRecorded) =>
        areRecorded || count == 1 ? Plain.Of(count, "session") : $"{Plain.Of(count, "photographer")} with a session each";

    /// <summary>What was shot under some conditions.</summary>
    public static string Counts(CurveData data, Conditions under)
    {
        var days = Under(data.Cells).Select(c => (c.Conditions.Photographer, c.Conditions.Session)).Distinct().ToArray();
        return Frames(data.SpeedsUnder(under))
            + $", {Sessions(days.Length, days.Any(d => d.Session is not null))}"
            + NotJudged(Under(data.NotJudged).Sum(c => c.Unjudged));

        IEnumerable<FrameCell> Under(IEnumerable<FrameCell> cells) =>
            cells.Where(c =>
                Conditions
                    .ColumnNames.Concat(under.Others.Keys)
                    .All(column => under[column] is not { } label || c.Conditions[column] == label)
            );
    }

    private static string Frames(ImmutableArray<SpeedCount> speeds) =>
        $"{Plain.Of(speeds.Sum(s => s.Keepers), "keeper")} of {Plain.Of(speeds.Sum(s => s.Frames), "frame")} at {Plain.Of(speeds.Length, "speed")}"
        + speeds switch
        {
            [] => "",
            [var only] => $", {only.Exposure}",
            [var fastest, .., var slowest] => $", {fastest.Exposure} to {slowest.Exposure}",
        };

    private static string NotJudged(int frames) => frames > 0 ? $", {Plain.Of(frames, "frame")} not judged" : "";

    private static string Allowing(Judging judging) =>
        judging == Judging.Perfect
            ? ""
            : $", allowing for a judge who knows {Plain.Percent(judging.Sensitivity)} of keepers and {Plain.Percent(judging.Specificity)} of rejects"
                + (
                    judging.FramesJudgedTwice == 0
                        ? ""
                        : $" (learned from {Plain.Of(judging.FramesJudgedTwice, "frame")} judged twice, and then taken as known)"
                );

    private static string Judged(Criterion? criterion) =>
        criterion switch
        {
            null => "The criterion was not recorded",
            { Name: "print" } => "Judged on a print",
            { Name: "pixel" } => "Judged at pixels",
            _ => $"Judged by the criterion {criterion}",
        };
}
