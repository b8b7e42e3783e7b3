using System.Collections.Immutable;

namespace Handhold.Cli;

/// <summary>The demo's story: the main questions, asked and answered.</summary>
internal static class DemoTale
{
    private const string Photographer = "Robin";
    private const string Steady = "dial 85 mm stabilised";
    private const string Unaided = "dial 85 mm";

    private static readonly ShutterSpeed Asked = ShutterSpeed.OneOver(8);

    public static void Tell(Page page, FittedCurves curves, string table, string fit, ImmutableArray<string> pictures)
    {
        page.Text(
            "The data are invented: two volunteers who do not exist photograph a museum of clocks that does not exist, where tripods are not allowed."
        );
        page.Text($"The table holds {Counts(curves)}.");
        page.Blank();
        var (steady, unaided) = (Find(curves, Steady), Find(curves, Unaided));
        Answer(page, $"How slow can {Photographer} go with the stabilised 85 mm lens?", steady.Slowest(rate: 0.8, assurance: 0.9));
        Answer(page, "Where are half the frames keepers?", steady.HalfKeeperExposure());
        Answer(page, $"How many frames bring one keeper home at {Asked}?", steady.FramesNeeded(Asked, keepers: 1, assurance: 0.95));
        Answer(page, $"And what do eight frames at {Asked} bring?", steady.KeepersToExpect(Asked, frames: 8));
        Answer(page, "What does the stabiliser buy?", steady.SlowerThan(unaided, rate: 0.8));
        page.Table(["Curve", "Keepers", "Half are keepers at", "Slowest for 80 %, 90 % sure"], curves.Select(Row));
        page.Blank();
        Files(page, table, fit, pictures);
        Cautions.Write(page, curves, []);
    }

    private static void Answer(Page page, string question, object answer)
    {
        page.Text(question);
        page.Text(answer.ToString()!, mark: "  ");
        page.Blank();
    }

    /// <summary>For a table that has no room for statuses.</summary>
    private static AnswerOptions Unchecked => AnswerOptions.Default with { CheckPriors = false, CheckMissing = false };

    private static string[] Row(KeeperCurve curve) =>
        [
            curve.Key.ToString(),
            FormattableString.Invariant($"{curve.Data.Keepers} of {curve.Data.Frames}"),
            curve.HalfKeeperExposure(Unchecked).Exposure is { } half ? Plain.Speed(half) : "not tested that slow",
            curve.Slowest(rate: 0.8, assurance: 0.9, Unchecked).Shutter?.ToString() ?? "no speed tested",
        ];

    private static void Files(Page page, string table, string fit, ImmutableArray<string> pictures)
    {
        page.Text($"Wrote {table}, {fit} and {Plain.Of(pictures.Length, "picture")}:");
        foreach (var picture in pictures)
            page.Text(picture, mark: "  ");
        page.Blank();
        page.Text("Now ask yourself:");
        page.Text($"handhold rate {table} --at 1/30 --set photographer=Kim", mark: "  ");
        page.Text($"handhold frames {fit} --at 1/15 --keepers 2 --assurance 95% --bursts-of 4", mark: "  ");
        page.Text("or put your own frames in such a table: shutter speed, kept or not, and what tells your lenses apart.");
        page.Blank();
    }

    private static KeeperCurve Find(FittedCurves curves, string setup) =>
        curves.First(c => c.Key["photographer"] == Photographer && c.Key["setup"] == setup);

    private static string Counts(FittedCurves curves) =>
        $"{Plain.Of(curves.Sum(c => c.Data.Keepers), "keeper")} of {Plain.Of(curves.Sum(c => c.Data.Frames), "frame")}, "
        + $"{curves.Sum(c => c.Data.Unjudged)} more that nobody judged, and makes {Plain.Of(curves.Count, "curve")}";
}
