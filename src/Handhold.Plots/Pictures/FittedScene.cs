using System.Collections.Immutable;
using System.Globalization;
using Handhold.Diagnostics;

namespace Handhold.Plots;

/// <summary>Everything a picture of observed against fitted rates shows.</summary>
internal sealed record FittedScene(PictureWords Words, ImmutableArray<FittedSpeed> Speeds, Palette Palette, Marks Marks)
{
    /// <summary>The speed farthest from what the others expect; null where nothing is expected.</summary>
    public FittedSpeed? Farthest => Speeds.Where(s => s.Gap is not null).MaxBy(s => Math.Abs(s.Gap!.Value));

    public static FittedScene Of(CurveChecks checks, PictureOptions options)
    {
        var (curve, marks) = (checks.Curve, options.Answers.Marks);
        ImmutableArray<FittedSpeed> speeds =
        [
            .. checks.Speeds.Select(s => new FittedSpeed(
                s.Seen.Exposure.Log2Seconds,
                (double)s.Seen.Keepers / s.Seen.Frames,
                s.Observed.Lower,
                s.Observed.Upper,
                s.Fitted,
                s.Expected
            )),
        ];
        FittedScene scene = new(new("", "", [], ""), speeds, Palette.Of(options.Theme), marks);
        return scene with
        {
            Words = new PictureWords(
                options.Title
                    ?? (
                        scene.Farthest is { } farthest
                            ? $"{CurveWords.Speed(farthest.Log2Seconds, marks)}: {Points(farthest)} what the other speeds expect"
                            : "The other speeds leave nothing to expect"
                    ),
                PictureWords.Name(curve),
                [
                    CurveWords.Data(curve),
                    $"Dots: keepers over frames, with exact {CurveWords.Percent(curve.Model.Level)} intervals. Diamonds: fitted. Hollow squares: expected by a fit of the other speeds. {CurveWords.Estimator(curve)}.",
                ],
                "Keeper rates observed, fitted, and expected by the other speeds. "
                    + string.Join(" ", speeds.Select(s => Said(s, CurveWords.Speed(s.Log2Seconds, marks))))
            ),
        };
    }

    /// <summary>"50 points below".</summary>
    public static string Points(FittedSpeed speed)
    {
        var gap = speed.Gap ?? 0;
        return $"{Math.Abs(gap).ToString("0", CultureInfo.InvariantCulture)} points {(gap < 0 ? "below" : "above")}";
    }

    private static string Said(FittedSpeed speed, string at) =>
        $"{at}: {CurveWords.WholePercent(speed.Rate)}, {(speed.Fitted is { } fitted ? CurveWords.WholePercent(fitted) : "none")}, {(speed.Expected is { } expected ? CurveWords.WholePercent(expected) : "none")}.";
}
