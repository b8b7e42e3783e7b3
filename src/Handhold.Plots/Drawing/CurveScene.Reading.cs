namespace Handhold.Plots;

internal sealed partial record CurveScene
{
    /// <summary>Enough for a smooth line in a wide picture.</summary>
    private const int Points = 161;

    /// <summary>Asks a curve for everything that a plot shows.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The target rate is not above 0 and below 1.</exception>
    public static CurveScene Of(KeeperCurve curve, KeeperCurvePlotOptions options)
    {
        var rate = options.TargetRate;
        if (!(rate > 0 && rate < 1))
        {
            throw new ArgumentOutOfRangeException(
                nameof(options),
                rate,
                "The target rate of a plot lies above 0 and below 1, such as 0.8."
            );
        }

        var (data, marks) = (curve.Data, options.Answers.Marks);
        var (fastest, slowest) = (data.Fastest.Log2Seconds, data.Slowest.Log2Seconds);
        var answer = curve.ExposureFor(rate, options.Answers);
        var target = ReadTarget(answer);
        var shown = CurveDrawing.Shown(fastest, slowest, target.Log2Seconds);
        var (from, to) = (ShutterSpeed.FromLog2Seconds(shown.Min), ShutterSpeed.FromLog2Seconds(shown.Max));
        var band = curve.Band(from, to, Points, options.Answers);
        return new CurveScene
        {
            Title =
                options.Title
                ?? CurveWords.WrongDirection(curve)
                ?? CurveWords.Finding(
                    target,
                    fastest,
                    slowest,
                    rateAtSlowest: band.Median[band.Log2Seconds.Count(x => x < slowest)],
                    marks
                ),
            Subject = curve.Key.Values.IsEmpty ? "" : curve.Key.ToString(),
            Captions = CurveWords.Captions(curve, answer, options.Answers),
            Observed = [.. data.SpeedsUnder(options.Answers.Conditions).Select(s => Observe(s, curve.Model.Level))],
            Log2Seconds = band.Log2Seconds,
            Median = band.Median,
            LineName = curve.Linear is null ? "median" : "estimate",
            Lower = band.Lower,
            Upper = band.Upper,
            Level = band.Level,
            Target = target,
            Ceiling = options.ShowCeiling ? curve.Parameters.FirstOrDefault(p => p.Name == "ceiling")?.Median : null,
            Marks = marks,
            Palette = Palette.Of(options.Theme),
        };
    }

    private static TargetExposure ReadTarget(ExposureAnswer answer) =>
        new(
            answer.Rate,
            answer.Exposure?.Log2Seconds,
            answer.HasAnswer || answer.Curve.Linear is not null ? [.. answer.Set.Pieces.Select(p => (p.Lower, p.Upper))] : [],
            answer.Statuses.All(s => s.Code != StatusCode.NotReachable)
        );

    internal static ObservedRate Observe(SpeedCount speed, double level)
    {
        var wilson = BinomialInterval.Wilson(speed.Keepers, speed.Frames, level);
        return new ObservedRate(speed.Exposure.Log2Seconds, speed.Keepers, speed.Frames, wilson.Lower, wilson.Upper);
    }
}
