using System.Collections.Immutable;

namespace Handhold.Plots;

/// <summary>Everything the picture of one level among others shows: at each of the exposures, log2 seconds, its rate with its interval, and that of a typical level; and what was observed, whether or not all under the conditions of these curves.</summary>
internal sealed record LevelCurveScene(
    PictureWords Words,
    ImmutableArray<double> Log2Seconds,
    ImmutableArray<double> Rate,
    ImmutableArray<double> Lower,
    ImmutableArray<double> Upper,
    ImmutableArray<double> Typical,
    ImmutableArray<ObservedRate> Observed,
    bool ConditionsDiffer,
    double? Half,
    Marks Marks,
    Palette Palette
)
{
    private const int Points = 81;

    /// <summary>A scene a level, the one of the fastest half-keeper speed first, those without one last.</summary>
    public static ImmutableArray<LevelCurveScene> Of(KeeperCurve curve, LevelGroup group, PictureOptions options)
    {
        var shown = CurveDrawing.Shown(curve.Data.Fastest.Log2Seconds, curve.Data.Slowest.Log2Seconds, null);
        var (from, to) = (ShutterSpeed.FromLog2Seconds(shown.Min), ShutterSpeed.FromLog2Seconds(shown.Max));
        var under = curve.Under(curve.ReferenceConditions);
        var differ = curve.Data.Cells.Any(c => curve.Under(c.Conditions) != under);
        var apart = differ ? $" The curves are for {under}; frames shot otherwise are among the points." : "";
        var typical = curve.Band(from, to, Points, AnswerOptions.OfReport(curve)).Median;
        return
        [
            .. group
                .Levels.OrderBy(l => l.HalfKeeperExposure?.Log2Seconds ?? double.PositiveInfinity)
                .Select(level => Of(level, level.Band(from, to, Points))),
        ];

        LevelCurveScene Of(FittedLevel level, CurveBand band) =>
            new(
                Said(level, group.Column, curve.Model.Level, apart, options),
                band.Log2Seconds,
                band.Median,
                band.Lower,
                band.Upper,
                typical,
                [.. level.Speeds.Select(s => CurveScene.Observe(s, curve.Model.Level))],
                differ,
                level.HalfKeeperExposure?.Log2Seconds,
                options.Answers.Marks,
                Palette.Of(options.Theme)
            );
    }

    private static PictureWords Said(FittedLevel level, string column, double confidence, string apart, PictureOptions options)
    {
        var kept = level.Speeds.Sum(s => s.Keepers);
        return new PictureWords(
            level.HalfKeeperExposure is { } half
                ? $"{level}: half at {CurveWords.Speed(half.Log2Seconds, options.Answers.Marks)}"
                : $"{level}: no half-keeper speed",
            $"{CurveWords.Number(kept)} of {CurveWords.Count(level.Frames, "frame")} kept; {CurveWords.WholePercent(level.Borrowed)} borrowed{(apart.Length > 0 ? "; hollow: conditions differ" : "")}",
            [],
            $"Keeper rate of {column} {level} against shutter speed, with its {CurveWords.Percent(confidence)} interval, before a typical {column}.{apart}"
        );
    }
}
