using System.Collections.Immutable;

namespace Handhold.Plots;

internal sealed partial record CurveScene
{
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

        var marks = options.Answers.Marks;
        var answer = curve.ExposureFor(rate, options.Answers);
        var target = ReadTarget(answer, marks);
        var observed = curve.Data.Speeds.Select(s => Observe(s, curve.Model.Level)).ToImmutableArray();
        var shown = CurveDrawing.Shown(observed[0].Log2Seconds, observed[^1].Log2Seconds, target.Log2Seconds);
        var band = curve.Band(
            ShutterSpeed.FromLog2Seconds(shown.Min),
            ShutterSpeed.FromLog2Seconds(shown.Max),
            points: 241,
            options.Answers
        );
        return new CurveScene
        {
            Title = options.Title ?? CurveWords.Finding(target, answer.Set.Kind, observed, band, marks),
            Subject = curve.Key.Values.IsEmpty ? "" : curve.Key.ToString(),
            Captions = CurveWords.Captions(curve, options.Answers),
            Observed = observed,
            Log2Seconds = band.Log2Seconds,
            Median = band.Median,
            Lower = band.Lower,
            Upper = band.Upper,
            CurveLabel = $"median and {CurveWords.Percent(band.Level)} band",
            Target = target,
            Ceiling = options.ShowCeiling ? curve.Parameters.FirstOrDefault(p => p.Name == "ceiling")?.Median : null,
            Marks = marks,
        };
    }

    private static ObservedRate Observe(SpeedCount count, double level)
    {
        var wilson = BinomialInterval.Wilson(count.Keepers, count.Frames, level);
        return new ObservedRate(count.Exposure.Log2Seconds, count.Keepers, count.Frames, wilson.Lower, wilson.Upper);
    }

    private static TargetExposure ReadTarget(ExposureAnswer answer, Marks marks)
    {
        var pieces = answer.HasAnswer ? answer.Set.Pieces.Select(p => (p.Lower, p.Upper)).ToImmutableArray() : [];
        return new TargetExposure(answer.Rate, answer.Exposure?.Log2Seconds, pieces, CurveWords.Target(answer, pieces, marks));
    }
}
