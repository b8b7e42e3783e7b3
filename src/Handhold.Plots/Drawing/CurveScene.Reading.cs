using System.Collections.Immutable;

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
            Observed = Observe(curve, options.Answers.Conditions),
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

    /// <summary>The counts at each speed; of a curve with terms only those under the conditions drawn, or all where there are none.</summary>
    private static ImmutableArray<ObservedRate> Observe(KeeperCurve curve, Conditions conditions)
    {
        string[] stated = [.. (curve.Linear?.Terms ?? []).SelectMany(t => t.Columns).Where(column => conditions[column] is not null)];
        var alike = curve.Data.Cells.Where(cell => stated.All(column => cell.Conditions[column] == conditions[column])).ToArray();
        return
        [
            .. (alike.Length > 0 ? alike : [.. curve.Data.Cells])
                .GroupBy(cell => cell.Exposure)
                .OrderBy(speed => speed.Key)
                .Select(speed => Observe(speed.Key, speed.Sum(c => c.Frames), speed.Sum(c => c.Keepers), curve.Model.Level)),
        ];
    }

    private static ObservedRate Observe(ShutterSpeed exposure, int frames, int keepers, double level)
    {
        var wilson = BinomialInterval.Wilson(keepers, frames, level);
        return new ObservedRate(exposure.Log2Seconds, keepers, frames, wilson.Lower, wilson.Upper);
    }
}
