using System.Collections.Immutable;

namespace Handhold.Plots;

/// <summary>Everything a picture of several curves shows: each one's own scene, drawn over each other.</summary>
internal sealed record SetupsScene(PictureWords Words, ImmutableArray<SetupLine> Lines, double Rate, Palette Palette, Marks Marks)
{
    public static SetupsScene Of(ImmutableArray<KeeperCurve> curves, double rate, PictureOptions options)
    {
        KeeperCurvePlotOptions one = new() { TargetRate = rate, Answers = options.Answers };
        var names = Names(curves);
        ImmutableArray<SetupLine> lines = [.. curves.Select((c, i) => new SetupLine(names[i], CurveScene.Of(c, one)))];
        var known = lines.Where(l => l.Scene.Target.Log2Seconds is not null).OrderBy(l => l.Scene.Target.Log2Seconds).ToArray();
        var marks = options.Answers.Marks;
        string At(SetupLine line) => CurveWords.Speed(line.Scene.Target.Log2Seconds!.Value, marks);
        var share = rate == 0.5 ? "Half the frames are keepers" : $"{CurveWords.Percent(rate)} of frames are keepers";
        var finding =
            known.Length > 1 ? $"{share} at {At(known[0])} with {known[0].Name}, at {At(known[^1])} with {known[^1].Name}"
            : known.Length == 1 ? $"{share} at {At(known[0])} with {known[0].Name}; the others do not say"
            : $"None of these curves says where {CurveWords.Percent(rate)} are keepers";
        var data = curves.Select((c, i) => $"{names[i]}: {CurveWords.Data(c)}");
        return new SetupsScene(
            new PictureWords(
                options.Title ?? finding,
                Shared(curves),
                [
                    $"Medians; below, exposures for {CurveWords.Percent(rate)} with {CurveWords.Percent(lines[0].Scene.Level)} intervals. {CurveWords.Source(curves[0], options.Answers, "For")}.",
                    string.Join(" ", data),
                ],
                "Keeper rates against shutter speed. "
                    + string.Join(
                        " ",
                        lines.Select(l => $"{l.Name}: {CurveWords.Target(l.Scene.Target, l.Scene.Level, marks).Replace('\n', ';')}.")
                    )
            ),
            lines,
            rate,
            Palette.Of(options.Theme),
            marks
        );
    }

    /// <summary>What all curves have in common.</summary>
    private static string Shared(ImmutableArray<KeeperCurve> curves) =>
        string.Join(" · ", curves[0].Key.Values.Where(v => curves.All(c => c.Key[v.Key] == v.Value)).Select(v => v.Value));

    /// <summary>What tells them apart.</summary>
    private static ImmutableArray<string> Names(ImmutableArray<KeeperCurve> curves) =>
        [
            .. curves.Select(
                (c, i) =>
                    c.Key.Values.Where(v => !curves.All(o => o.Key[v.Key] == v.Value)).Select(v => v.Value).ToArray() is { Length: > 0 } own
                        ? string.Join(" · ", own)
                        : $"curve {CurveWords.Number(i + 1)}"
            ),
        ];
}
