using System.Collections.Immutable;
using Handhold.Diagnostics;

namespace Handhold.Plots;

/// <summary>Everything a picture of residuals shows.</summary>
internal sealed record ResidualsScene(PictureWords Words, ImmutableArray<ResidualPoint> Points, Palette Palette, Marks Marks)
{
    /// <summary>Beyond this lies one residual in twenty when the curve is right.</summary>
    public const double Usual = 2;

    public static ResidualsScene Of(CurveChecks checks, PictureOptions options)
    {
        var (curve, marks) = (checks.Curve, options.Answers.Marks);
        ImmutableArray<ResidualPoint> points =
        [
            .. checks
                .Cells.Where(c => c.Residual is not null)
                .Select(c => new ResidualPoint(
                    c.Cells[0].Exposure.Log2Seconds,
                    c.Residual!.Value,
                    $"{CurveWords.Number(c.Keepers)} of {CurveWords.Number(c.Frames)}",
                    c.IsReliable
                )),
        ];
        var beyond = points.Count(p => Math.Abs(p.Residual) > Usual);
        var hollow = points.All(p => p.IsReliable) ? "" : " Hollow: the cell weighs too much to be left out by weights alone.";
        return new ResidualsScene(
            new PictureWords(
                options.Title
                    ?? $"{CurveWords.Number(beyond)} of {CurveWords.Count(points.Length, "residual")} {(beyond == 1 ? "lies" : "lie")} beyond \u00B12, where one in twenty does by chance",
                PictureWords.Name(curve),
                [
                    CurveWords.Data(curve),
                    $"Each burst, or the frames of equal conditions that share none, against what all other frames lead to expect: randomised quantiles, standard normal where the curve is right.{hollow} {CurveWords.Estimator(curve)}.",
                ],
                "Residuals in normal deviates. "
                    + string.Join(
                        " ",
                        points.Select(p => $"{p.Counts} at {CurveWords.Speed(p.Log2Seconds, marks)}: {CurveWords.Signed(p.Residual)}.")
                    )
            ),
            points,
            Palette.Of(options.Theme),
            marks
        );
    }
}
