namespace Handhold.Tables;

/// <summary>What an answer says, as named values.</summary>
internal static class AnswerColumns
{
    public static IEnumerable<(string Name, object? Value)> Of(Answer answer) =>
        answer switch
        {
            RateAnswer a => [("question", "rate"), ("at_s", a.At.Seconds), .. Rate(a.Rate)],
            ExposureAnswer a =>
            [
                ("question", "exposure"),
                ("rate", a.Rate),
                ("exposure_s", a.Exposure?.Seconds),
                ("set", a.Set.Kind.ToString()),
                .. Piece(a.Set, 0, ""),
                .. Piece(a.Set, 1, "second_"),
            ],
            SlowestAnswer a =>
            [
                ("question", "slowest"),
                ("wanted", a.Wanted),
                ("exposure_s", a.Shutter?.Seconds),
                ("assurance", a.Assurance),
            ],
            FramesNeededAnswer a =>
            [
                ("question", "frames"),
                ("at_s", a.At.Seconds),
                ("keepers", a.Keepers),
                ("wanted_assurance", a.WantedAssurance),
                ("frames", a.Frames),
                ("bursts", a.Frames is null ? null : a.Bursts.Length),
                ("assurance", a.Rate is null ? null : a.Assurance),
                .. Rate(a.Rate),
            ],
            KeeperCountAnswer a =>
            [
                ("question", "keepers"),
                ("at_s", a.At.Seconds),
                ("frames", a.Frames),
                .. a.Probabilities.Select((p, k) => (FormattableString.Invariant($"p_{k}"), (object?)p)),
            ],
            _ => [("question", "other"), ("sentence", answer.Sentence)],
        };

    private static IEnumerable<(string, object?)> Rate(RateEstimate? rate) =>
        [("mean", rate?.Mean), ("median", rate?.Median), ("lower", rate?.Interval.Lower), ("upper", rate?.Interval.Upper)];

    private static IEnumerable<(string, object?)> Piece(ExposureSet set, int index, string prefix) =>
        set.Pieces.Length <= index
            ? []
            : [($"{prefix}lower_s", Seconds(set.Pieces[index].Lower)), ($"{prefix}upper_s", Seconds(set.Pieces[index].Upper))];

    /// <summary>Null is unbounded.</summary>
    private static double? Seconds(double? log2Seconds) => log2Seconds is { } x ? ShutterSpeed.FromLog2Seconds(x).Seconds : null;
}
