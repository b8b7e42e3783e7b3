using System.Globalization;

namespace Handhold.Cli;

/// <summary>What was learned of one curve, for people.</summary>
internal static class FitReport
{
    public static void Write(Page page, KeeperCurve curve, bool check)
    {
        if (curve.Linear is { } linear)
        {
            LinearReport.Write(page, curve, linear);
            return;
        }

        CurveNotes.Heading(page, curve);
        var options = AnswerOptions.OfReport(curve);
        var half = curve.HalfKeeperExposure(options);
        page.Text(GroupReport.Typical(curve.Model.Varies) + LinearReport.Under(curve) + half.Sentence);
        page.Blank();
        page.Table(
            ["", "Estimate", Plain.Level(curve.Model.Level) + " interval"],
            [
                [
                    "Half-keeper speed",
                    half.Exposure is { } exposure ? Plain.Speed(exposure) : "none",
                    Plain.Set(half.Set) + Width(half.Set),
                ],
                .. Rows(curve),
                .. CurveNotes.Alike(curve, half, options),
            ]
        );
        page.Blank();
        if (curve.Terms.IsEmpty)
            page.Table(
                ["Speed", "Keepers here", $"Chance of one{(curve.Model.Varies.IsEmpty ? "" : " typical")} frame on another day"],
                curve.Data.Speeds.Select(speed => Row(curve, speed, options))
            );
        else
            page.Table(
                ["What it buys (+) or costs (-)", "Estimate", Plain.Level(curve.Model.Level) + " interval"],
                LinearReport.Effects(curve)
            );
        foreach (var levels in curve.Levels)
            LevelReport.Write(page, levels, curve.Model.Level);
        page.Blank();
        if (check || !CurveNotes.IsCheckDear(curve))
            CurveNotes.Checks(page, curve);
        CurveNotes.Write(page, curve, [.. curve.Statuses, .. half.Statuses.Where(s => s.Message != half.Sentence)]);
    }

    private static IEnumerable<string[]> Rows(KeeperCurve curve)
    {
        foreach (var parameter in curve.Parameters)
        {
            var (median, interval) = (parameter.Median, parameter.Interval);
            if (parameter.Name == "log2b")
                yield return
                [
                    "Steepness",
                    $"keeper odds fall by a factor of {Plain.Factor(OddsFactor(median))} per stop",
                    $"{Plain.Factor(OddsFactor(interval.Lower))} to {Plain.Factor(OddsFactor(interval.Upper))}",
                ];
            else if (parameter.Name is "ceiling" or "floor")
                yield return [parameter.Name == "ceiling" ? "Ceiling" : "Floor", Plain.Percent(median), Plain.Percents(interval)];
            else if (parameter.Name is "sessionLuck" or "burstLuck")
                yield return
                [
                    parameter.Name == "sessionLuck" ? "Luck of a day" : "Luck of a burst",
                    $"{Plain.Stops(median)} stops",
                    $"{Plain.Stops(interval.Lower)} to {Plain.Stops(interval.Upper)} stops",
                ];
        }

        if (curve.Model.Ceiling.Value is { } ceiling)
            yield return ["Ceiling", Plain.Percent(ceiling), "given"];
        if (curve.Model.Floor.Value is { } floor and > 0)
            yield return ["Floor", Plain.Percent(floor), "given"];
    }

    private static string Width(ExposureSet set) =>
        set.Pieces is [{ Lower: { } lower, Upper: { } upper }] ? $", {Plain.Stops(upper - lower)} stops" : "";

    private static string[] Row(KeeperCurve curve, SpeedCount speed, AnswerOptions options) =>
        [
            speed.Exposure.ToString(),
            string.Create(CultureInfo.InvariantCulture, $"{speed.Keepers} of {speed.Frames}"),
            curve.RateAt(speed.Exposure, options with { CheckPriors = false }).Rate is { } rate ? Plain.Percent(rate.Mean) : "",
        ];

    /// <summary>Odds are e^b times smaller after one stop, b = 2^log2b logits.</summary>
    private static double OddsFactor(double log2b) => Math.Exp(Math.Pow(2, log2b));
}
