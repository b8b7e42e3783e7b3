using System.Collections.Immutable;
using System.Globalization;

namespace Handhold.Plots;

/// <summary>Everything a picture of the keepers to expect shows.</summary>
internal sealed record CountScene
{
    /// <summary>The words around it.</summary>
    public required PictureWords Words { get; init; }

    /// <summary>Probability of 0, 1, ... keepers with all frames in one burst; empty when declined.</summary>
    public required ImmutableArray<double> OneBurst { get; init; }

    /// <summary>The same in several bursts.</summary>
    public required ImmutableArray<double> Bursts { get; init; }

    /// <summary>What the second one is called.</summary>
    public required string BurstsName { get; init; }

    /// <summary>The colours.</summary>
    public Palette Palette { get; init; } = Palette.Light;

    public static CountScene Of(
        KeeperCurve curve,
        ShutterSpeed at,
        int frames,
        int burstsOf,
        PictureOptions options,
        CancellationToken cancellation
    )
    {
        var one = curve.KeepersToExpect(at, frames, options.Answers with { BurstsOf = null }, cancellation);
        var several = curve.KeepersToExpect(at, frames, options.Answers with { BurstsOf = burstsOf }, cancellation);
        var name = $"bursts of {burstsOf.ToString(CultureInfo.InvariantCulture)}";
        var speed = CurveWords.Speed(at.Log2Seconds, options.Answers.Marks);
        var shot = $"{CurveWords.Count(frames, "frame")} at {speed}";
        return new CountScene
        {
            OneBurst = one.Probabilities,
            Bursts = several.Probabilities,
            BurstsName = name,
            Palette = Palette.Of(options.Theme),
            Words = new PictureWords(
                options.Title
                    ?? (
                        one.HasAnswer
                            ? $"{shot} come home empty {Chance(one)} of the time in one burst, {Chance(several)} in {name}"
                            : one.Sentence.TrimEnd('.')
                    ),
                PictureWords.Name(curve),
                [
                    CurveWords.Data(curve),
                    $"{CurveWords.Source(curve, options.Answers, "For")}. Filled: all frames in one burst; hollow: {name}, each with a fresh grip.",
                    .. one
                        .Statuses.Concat(several.Statuses)
                        .Where(s => s.Code == StatusCode.RestsOnPrior)
                        .Select(s => s.Message)
                        .Distinct(),
                ],
                $"Probability of each number of keepers among {shot}. In one burst: {List(one)}. In {name}: {List(several)}."
            ),
        };
    }

    private static string Chance(KeeperCountAnswer answer) => CurveWords.WholePercent(answer.Probabilities[0]);

    private static string List(KeeperCountAnswer answer) =>
        string.Join(
            ", ",
            answer.Probabilities.Select((p, k) => $"{k.ToString(CultureInfo.InvariantCulture)}: {CurveWords.WholePercent(p)}")
        );
}
