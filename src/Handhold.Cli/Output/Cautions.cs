using System.Collections.Immutable;

namespace Handhold.Cli;

/// <summary>What a careful friend would add.</summary>
internal static class Cautions
{
    /// <summary>Focal lengths from which lenses are usually long and heavy, mm equivalent.</summary>
    private const double LongLens = 200;

    /// <summary>From here on people brace themselves against whatever is at hand.</summary>
    private static readonly ShutterSpeed Braced = ShutterSpeed.OneOver(8);

    public static void Write(Page page, IEnumerable<KeeperCurve> curves, ImmutableArray<Answer> answers)
    {
        if (answers.Any(a => a.HasAnswer && Asked(a) is { } speed && speed >= Braced))
            page.Text("Brace yourself only where the footing is safe, the way stays free and the rules of the place allow it.");
        if (curves.SelectMany(c => c.Data.Cells).Any(c => c.Conditions.EffectiveEquivalentFocalLength >= LongLens))
            page.Text("Long lenses are heavy: rest your arms between bursts, and stop when they tire.");
        page.Text("Guidance from a test of yours, not a measurement standard: another subject, grip or judge is another curve.");
    }

    private static ShutterSpeed? Asked(Answer answer) =>
        answer switch
        {
            RateAnswer a => a.At,
            FramesNeededAnswer a => a.At,
            SlowestAnswer a => a.Shutter,
            ExposureAnswer a => a.Exposure,
            _ => null,
        };
}
