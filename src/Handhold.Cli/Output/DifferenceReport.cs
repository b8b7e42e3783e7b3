namespace Handhold.Cli;

/// <summary>A difference of two curves, for people.</summary>
internal static class DifferenceReport
{
    public static void Write(Page page, StopsDifference difference, string between, AnswerOptions options)
    {
        var (a, b) = (new Side(difference.A, difference.ConditionsOfA), new Side(difference.B, difference.ConditionsOfB));
        var shared = difference.A.Key.Values.Where(v => v.Key != between).Select(v => v.Value).ToArray();
        if (shared.Length > 0)
            page.Text(string.Join(" · ", shared));
        page.Text(difference.Sentence);
        page.Blank();
        page.Table(
            ["", $"{Plain.Level(difference.Rate)} keepers at", Plain.Level(difference.A.Model.Level) + " interval", "Rests on"],
            new[] { a, b }.Select(side => Row(side, difference.Rate, between, options))
        );
        page.Blank();
        CurveNotes.Basis(page, difference.B, difference.Statuses.Where(s => s.Message != difference.Sentence));
    }

    private sealed record Side(KeeperCurve Curve, Conditions Conditions);

    private static string[] Row(Side side, double rate, string between, AnswerOptions options)
    {
        var curve = side.Curve;
        var exposure = curve.ExposureFor(
            rate,
            options with
            {
                BeyondTested = true,
                CheckPriors = false,
                CheckMissing = false,
                Conditions = side.Conditions,
            }
        );
        return
        [
            curve.Key[between] ?? side.Conditions[between] ?? "",
            exposure.Exposure is { } speed ? Plain.Speed(speed) : "none",
            Plain.Set(exposure.Set),
            RestsOn(side, between),
        ];
    }

    /// <summary>The frames of a level that varies; otherwise those of the curve.</summary>
    private static string RestsOn(Side side, string between)
    {
        if (side.Curve.Model.Varies.FirstOrDefault(v => v.Column == between) is not { } varying)
            return CurveNotes.Counts(side.Curve.Data);
        var level = varying
            .Within.Append(between)
            .Aggregate(Conditions.None, (told, column) => side.Conditions[column] is { } label ? told.With(column, label) : told);
        return CurveNotes.Counts(side.Curve.Data, level);
    }
}
