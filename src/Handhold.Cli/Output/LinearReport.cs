using System.Globalization;

namespace Handhold.Cli;

/// <summary>What the likelihood or bias-reduced estimator found of one curve, for people.</summary>
internal static class LinearReport
{
    public static void Write(Page page, KeeperCurve curve, LinearFit linear)
    {
        CurveNotes.Heading(page, curve);
        var options = AnswerOptions.OfReport(curve);
        var half = curve.HalfKeeperExposure(options);
        page.Text(GroupReport.Typical([.. linear.Groups.Select(g => g.Varying)]) + Under(curve) + half.Sentence);
        page.Blank();
        page.Table(["", "Estimate", Plain.Level(linear.Level) + " interval"], Rows(half, curve, options));
        page.Blank();
        page.Table(
            [
                $"On the {curve.Model.Link.ToString().ToLowerInvariant()} scale",
                "Estimate",
                "Standard error",
                Plain.Level(linear.Level) + " interval",
            ],
            (linear.Luck is { } luck ? [.. linear.Coefficients, luck] : linear.Coefficients).Select(Row)
        );
        page.Blank();
        page.Text(
            string.Create(
                CultureInfo.InvariantCulture,
                $"Log-likelihood {linear.LogLikelihood:0.000}; deviance {linear.Deviance:0.00} on {linear.DegreesOfFreedom} degrees of freedom."
            )
        );
        if (linear.Terms.IsEmpty && linear.HasExposure)
        {
            page.Blank();
            page.Table(
                ["Speed", "Keepers here", linear.Nodes is null ? "Estimated rate" : "Typical rate"],
                curve.Data.Speeds.Select(speed => Row(curve, speed, options))
            );
        }

        foreach (var group in linear.Groups)
            GroupReport.Write(page, group);
        page.Blank();
        CurveNotes.Checks(page, curve);
        CurveNotes.Write(
            page,
            curve,
            curve.Statuses.Concat(half.Statuses).Where(s => !half.Sentence.Contains(s.Message, StringComparison.Ordinal))
        );
    }

    /// <summary>The reference that the first sentence is for.</summary>
    internal static string Under(KeeperCurve curve)
    {
        var text = curve.Under(curve.ReferenceConditions);
        return text.Length == 0 ? "" : $"For {text}: ";
    }

    internal static IEnumerable<string[]> Effects(KeeperCurve curve)
    {
        foreach (var effect in curve.InStops)
            yield return
            [
                string.Join(", ", effect.Words),
                effect.Stops is { } stops ? stops.ToString() : "not given",
                Ends(effect.Lower, effect.Upper, Plain.Change) + " stops",
            ];
    }

    private static IEnumerable<string[]> Rows(ExposureAnswer half, KeeperCurve curve, AnswerOptions options) =>
        [
            ["Half-keeper speed", half.Exposure is { } exposure ? Plain.Speed(exposure) : "none", Plain.Set(half.Set)],
            .. CurveNotes.Alike(curve, half, options),
            .. Effects(curve),
        ];

    private static string[] Row(Coefficient coefficient) =>
        [
            coefficient.Name switch
            {
                "burstLuck" => "Luck of a burst, sd",
                "rho" => "Correlation of two frames of a burst (rho)",
                var name => name,
            },
            coefficient.Estimate is { } estimate ? Number(estimate) : "none",
            coefficient.StandardError is { } error ? Number(error) : "",
            Ends(coefficient.Interval.Lower, coefficient.Interval.Upper, Number),
        ];

    private static string[] Row(KeeperCurve curve, SpeedCount speed, AnswerOptions options) =>
        [
            speed.Exposure.ToString(),
            string.Create(CultureInfo.InvariantCulture, $"{speed.Keepers} of {speed.Frames}"),
            curve.RateAt(speed.Exposure, options).Rate is { } rate ? Plain.Percent(rate.Mean) : "any",
        ];

    internal static string Ends(double? lower, double? upper, Func<double, string> say) =>
        (lower, upper) switch
        {
            ({ } low, { } high) => $"{say(low)} to {say(high)}",
            (null, { } high) => $"up to {say(high)}",
            ({ } low, null) => $"from {say(low)} up",
            _ => "unbounded",
        };

    internal static string Number(double value) => value.ToString("0.000", CultureInfo.InvariantCulture);
}
