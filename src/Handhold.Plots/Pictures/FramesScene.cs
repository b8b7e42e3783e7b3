using System.Collections.Immutable;
using System.Globalization;

namespace Handhold.Plots;

/// <summary>Everything a picture of frames needed shows.</summary>
internal sealed record FramesScene
{
    /// <summary>A speed within this of a tested one counts as tested, stops: marks are nominal.</summary>
    private const double Nominal = 0.1;

    /// <summary>The words around it.</summary>
    public required PictureWords Words { get; init; }

    /// <summary>Frames for one keeper, for two, for three; only speeds that can be reached.</summary>
    public required ImmutableArray<ImmutableArray<FramesPoint>> Series { get; init; }

    /// <summary>Exposures shown, log2 seconds.</summary>
    public required (double Fastest, double Slowest) Shown { get; init; }

    /// <summary>The most frames considered.</summary>
    public required int Budget { get; init; }

    /// <summary>Whether some speed takes more than that.</summary>
    public required bool PassesBudget { get; init; }

    /// <summary>The camera's marks.</summary>
    public Marks Marks { get; init; } = Marks.Third;

    /// <summary>The colours.</summary>
    public Palette Palette { get; init; } = Palette.Light;

    public static FramesScene Of(KeeperCurve curve, double assurance, PictureOptions options, CancellationToken cancellation)
    {
        var (fastest, slowest) = (curve.Data.Fastest.Log2Seconds, curve.Data.Slowest.Log2Seconds + 1);
        ImmutableArray<ShutterSpeed> speeds =
        [
            .. MarkedSpeeds.Series(Marks.Full).Where(s => s.Log2Seconds >= fastest - Nominal && s.Log2Seconds <= slowest + Nominal),
        ];
        var series = ImmutableArray.CreateBuilder<ImmutableArray<FramesPoint>>();
        FramesNeededAnswer? end = null;
        var passes = false;
        for (var keepers = 1; keepers <= 3; keepers++)
        {
            var points = ImmutableArray.CreateBuilder<FramesPoint>();
            foreach (var speed in speeds)
            {
                var answer = curve.FramesNeeded(speed, keepers, assurance, options.Answers, cancellation);
                if (answer.Frames is not { } frames)
                {
                    // Slower speeds and more keepers take more still.
                    end = keepers == 1 ? answer : end;
                    passes |= answer.Statuses.Any(s => s.Code == StatusCode.OverBudget);
                    break;
                }

                points.Add(new FramesPoint(speed.Log2Seconds, frames, answer.Statuses.Any(s => s.Code == StatusCode.RestsOnPrior)));
            }

            series.Add(points.ToImmutable());
        }

        return new FramesScene
        {
            Series = series.ToImmutable(),
            Shown = (speeds[0].Log2Seconds - 0.6, speeds[^1].Log2Seconds + 0.6),
            Budget = options.Answers.Budget,
            PassesBudget = passes,
            Marks = options.Answers.Marks,
            Palette = Palette.Of(options.Theme),
            Words = new PictureWords(
                options.Title ?? Finding(series[0], end, options.Answers),
                PictureWords.Name(curve),
                Captions(curve, assurance, options, series.SelectMany(s => s).Any(p => p.RestsOnPrior)),
                Aloud(series)
            ),
        };
    }

    private static string Finding(ImmutableArray<FramesPoint> one, FramesNeededAnswer? end, AnswerOptions options)
    {
        if (end is not null && end.Statuses.Any(s => s.Code == StatusCode.OverBudget))
        {
            return $"Use a support from {Speed(end.At.Log2Seconds)} on: one keeper takes more than {CurveWords.Count(options.Budget, "frame")}";
        }

        return one.IsEmpty
            ? "Too little was tested to say how many frames"
            : $"One keeper takes {CurveWords.Count(one[^1].Frames, "frame")} at {Speed(one[^1].Log2Seconds)}";
    }

    private static ImmutableArray<string> Captions(KeeperCurve curve, double assurance, PictureOptions options, bool restsOnPrior)
    {
        var shot = options.Answers.BurstsOf is { } m ? $"in bursts of {m.ToString(CultureInfo.InvariantCulture)}" : "in one burst";
        return
        [
            CurveWords.Data(curve),
            $"{CurveWords.Source(curve, options.Answers, "For")}. Frames {shot} that bring the keepers home with {CurveWords.Percent(assurance)} assurance."
                + (curve.Linear is null ? "" : " They take the estimated rate for the true one.")
                + (restsOnPrior ? " Hollow: rests on the priors." : ""),
        ];
    }

    private static string Aloud(IEnumerable<ImmutableArray<FramesPoint>> series) =>
        "Frames needed against shutter speed. "
        + string.Join(
            " ",
            series.Select(
                (points, i) =>
                    $"For {CurveWords.Count(i + 1, "keeper")}: "
                    + (
                        points.IsEmpty
                            ? "none."
                            : string.Join(
                                ", ",
                                points.Select(p => $"{p.Frames.ToString(CultureInfo.InvariantCulture)} at {Speed(p.Log2Seconds)}")
                            ) + "."
                    )
            )
        );

    private static string Speed(double log2Seconds) => CurveWords.Speed(log2Seconds, Marks.Full);
}
