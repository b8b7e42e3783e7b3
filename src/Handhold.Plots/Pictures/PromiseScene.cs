using System.Collections.Immutable;

namespace Handhold.Plots;

/// <summary>Everything a picture of promises against what was kept shows.</summary>
internal sealed record PromiseScene(PictureWords Words, ImmutableArray<PromisePoint> Points, Palette Palette)
{
    public static PromiseScene Of(KeptReport report, PictureOptions options)
    {
        ImmutableArray<PromisePoint> points =
        [
            .. report.ByAssurance.Select(g => new PromisePoint(
                g.Value.Promised,
                g.Value.Share,
                g.Value.Interval.Lower,
                g.Value.Interval.Upper,
                g.Value.Kept,
                g.Value.Decided
            )),
        ];
        var open = report.Shoots.Length - points.Sum(p => p.Decided);
        var shared = report.Overall is { } all && all.Days < all.Decided ? " They count days, since shoots of one day share its luck." : "";
        return new PromiseScene(
            new PictureWords(
                options.Title ?? Finding(report),
                "",
                [
                    $"{CurveWords.Count(report.Plans.Length, "plan")}, {CurveWords.Count(report.Shoots.Length, "shoot")}{(open == 0 ? "" : $", {CurveWords.Number(open)} of them open")}. Dots: plans kept of those decided; bars: {CurveWords.Percent(report.Level)} Wilson intervals.{shared}",
                ],
                "Share of plans kept against the share promised. " + string.Join(" ", points.Select(Said))
            ),
            points,
            Palette.Of(options.Theme)
        );
    }

    private static string Finding(KeptReport report) =>
        report.Overall is { } all
            ? $"{CurveWords.WholePercent(all.Share)} of plans were kept, {CurveWords.WholePercent(all.Promised)} were promised to be"
            : "No plan was shot so that one could say whether it was kept";

    private static string Said(PromisePoint point) =>
        $"Promised {CurveWords.WholePercent(point.Promised)}: kept {CurveWords.Number(point.Kept)} of {CurveWords.Number(point.Decided)}, interval {CurveWords.WholePercent(point.Lower)} to {CurveWords.WholePercent(point.Upper)}.";
}
