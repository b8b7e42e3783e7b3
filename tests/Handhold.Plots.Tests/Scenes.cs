using System.Collections.Immutable;

namespace Handhold.Plots.Tests;

/// <summary>Invented scenes: falling curves of known shape, with bands of a stop or so.</summary>
internal static class Scenes
{
    public static readonly ImmutableArray<string> Names =
    [
        "ordinary",
        "high target",
        "all or nothing",
        "not reachable",
        "all keepers",
        "one speed",
        "many",
        "narrow",
    ];

    public static CurveScene Named(string name) =>
        name switch
        {
            "ordinary" => Make(
                0.5,
                -3.7,
                1.6,
                0.97,
                0.8,
                [(125, 6, 6), (60, 6, 6), (30, 6, 5), (15, 6, 4), (8, 8, 2), (4, 4, 0)],
                subject: "Robin · dial 85 mm stabilised · print"
            ),
            "high target" => Make(
                0.8,
                -4.5,
                1.6,
                0.97,
                0.7,
                [(250, 4, 4), (125, 6, 6), (60, 6, 6), (30, 12, 9), (15, 24, 10), (8, 8, 2)],
                ceiling: 0.97,
                subject: "Kim · dial 85 mm stabilised · print"
            ),
            "all or nothing" => Make(0.5, -5.4, 2.4, 1, 0.5, [(250, 6, 6), (125, 6, 6), (60, 6, 6), (30, 6, 0), (15, 6, 0)]),
            "not reachable" => Make(
                0.8,
                -4.3,
                2,
                0.65,
                1,
                [(250, 8, 5), (125, 8, 6), (60, 8, 4), (30, 8, 5), (15, 8, 2), (8, 8, 0)],
                ceiling: 0.65,
                subject: "Robin · pendulum 35 mm · print"
            ),
            "all keepers" => Make(0.5, -1, 1.4, 0.98, 2, [(125, 6, 6), (60, 6, 6), (30, 6, 6), (15, 6, 6)], declined: true),
            "one speed" => Make(0.5, -4.4, 1.6, 0.98, 1.2, [(30, 10, 7)]),
            "many" => Make(
                0.9,
                -3,
                1.2,
                0.99,
                0.3,
                [
                    .. new[]
                    {
                        8000.0,
                        4000,
                        2000,
                        1000,
                        500,
                        250,
                        125,
                        60,
                        30,
                        15,
                        8,
                        4,
                        2,
                        1,
                        0.5,
                        0.25,
                        1 / 8.0,
                        1 / 15.0,
                        1 / 30.0,
                    }.Select(d => (d, 40, (int)Math.Round(40 * 0.99 / (1 + Math.Exp(-1.2 * (-3 + Math.Log2(d))))))),
                ]
            ),
            "narrow" => Make(0.5, -5.1, 3, 1, 0.3, [(50, 3, 3), (40, 3, 2), (30, 3, 1), (25, 1, 0)], subject: "thirds of a stop"),
            _ => throw new ArgumentOutOfRangeException(nameof(name), name, null),
        };

    public static CurveScene Make(
        double rate,
        double half,
        double steepness,
        double top,
        double doubt,
        ImmutableArray<(double Denominator, int Frames, int Keepers)> counts,
        double? ceiling = null,
        string subject = "",
        bool declined = false
    )
    {
        var observed = counts.Select(c => Observe(-Math.Log2(c.Denominator), c.Keepers, c.Frames)).ToImmutableArray();
        double? ExposureAt(double shift) => rate < top && !declined ? half + shift + (Math.Log((top / rate) - 1) / steepness) : null;
        ImmutableArray<(double?, double?)> pieces = rate < top && !declined ? [(ExposureAt(-doubt), ExposureAt(doubt))] : [];
        var exposure = ExposureAt(0);
        var shown = CurveDrawing.Shown(observed[0].Log2Seconds, observed[^1].Log2Seconds, exposure);
        var xs = Enumerable.Range(0, 241).Select(i => shown.Min + (i * (shown.Max - shown.Min) / 240)).ToImmutableArray();
        ImmutableArray<double> Curve(double shift, double height) =>
            [.. xs.Select(x => height / (1 + Math.Exp(-steepness * (half + shift - x))))];
        TargetExposure target = new(rate, exposure, pieces, IsReachable: rate < top);
        return new CurveScene
        {
            Title = CurveWords.Finding(target, observed[0].Log2Seconds, observed[^1].Log2Seconds, Curve(0, top)[180], Marks.Third),
            Subject = subject,
            Captions =
            [
                $"{counts.Sum(c => c.Keepers)} of {counts.Sum(c => c.Frames)} frames kept at {counts.Length} speeds in 2 sessions. Judged on a print; 3 frames not judged.",
                "Curve for another day: posterior, priors-1. Dots: keepers of frames, area by frames; bars: 95\u00A0% Wilson intervals.",
            ],
            Observed = observed,
            Log2Seconds = xs,
            Median = Curve(0, top),
            Lower = Curve(-doubt, top - 0.02),
            Upper = Curve(doubt, Math.Min(1, top + 0.015)),
            Target = target,
            Ceiling = ceiling,
        };
    }

    private static ObservedRate Observe(double log2Seconds, int keepers, int frames)
    {
        var wilson = BinomialInterval.Wilson(keepers, frames);
        return new ObservedRate(log2Seconds, keepers, frames, wilson.Lower, wilson.Upper);
    }
}
