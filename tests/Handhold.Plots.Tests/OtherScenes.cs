using System.Collections.Immutable;
using ScottPlot;

namespace Handhold.Plots.Tests;

/// <summary>Invented scenes of every other kind of picture.</summary>
internal static class OtherScenes
{
    public static readonly ImmutableArray<string> Names =
    [
        "frames",
        "frames without a limit",
        "frames, none",
        "keepers",
        "keepers, many",
        "setups",
        "setups, six",
        "stops",
        "stops, open",
        "prior",
        "kept",
        "kept, few",
        "kept, none",
        "days",
        "days, many",
        "days, one",
        "fitted",
        "fitted, crowded",
        "residuals",
        "residuals, far",
        "levels",
        "levels, many",
        "levels, open",
        "level curve",
    ];

    public static Plot Draw(string name, PictureTheme theme = PictureTheme.Light) =>
        name switch
        {
            "frames" => FramesPicture.Draw(Frames(theme, [1, 1, 2, 5, 16], [2, 3, 4, 10, 30], [4, 5, 6, 14, 46], budget: 100)),
            "frames without a limit" => FramesPicture.Draw(
                Frames(theme, [1, 1, 1, 1, 2, 2], [2, 2, 2, 3, 3, 4], [3, 3, 4, 4, 5, 5], budget: 1000)
            ),
            "frames, none" => FramesPicture.Draw(Frames(theme, [], [], [], budget: 30)),
            "keepers" => CountPicture.Draw(Count(theme, 12)),
            "keepers, many" => CountPicture.Draw(Count(theme, 100)),
            "setups" => SetupsPicture.Draw(Setups(theme, 2)),
            "setups, six" => SetupsPicture.Draw(Setups(theme, 6)),
            "stops" => StopsPicture.Draw(
                Stops(
                    theme,
                    new("stabiliser: lens\nat rated stops 4", 2.3, 1.5, 3.1, 4),
                    new("magnification\nat magnification 0.5", -2.1, -3, -1.2, null),
                    new("subjectMotion: slight", -0.6, -1.5, 0.2, null),
                    new("firstFrame", -0.2, -0.7, 0.3, null)
                )
            ),
            "stops, open" => StopsPicture.Draw(
                Stops(
                    theme,
                    new("wind: strong", null, null, -1, null),
                    new("judge: Kim", 30, 0.4, null, null),
                    new("support", null, null, null, null)
                )
            ),
            "prior" => PriorPicture.Draw(
                new PriorScene(
                    Words("The frames put the half point at 1/13\u00A0s"),
                    (-5.4, 2),
                    (-3.7, 0.35),
                    Palette.Of(theme),
                    Marks.Third
                )
            ),
            "levels" => LevelsPicture.Draw(
                Levels(theme, new("ada", -5, -6, -4.1, 0.2), new("ben", -4.2, -5, -3.6, 0.1), new("cleo", -3.9, -6, -2.1, 0.8))
            ),
            "levels, many" => LevelsPicture.Draw(
                Levels(
                    theme,
                    [
                        .. Enumerable
                            .Range(0, 60)
                            .Select(i => new LevelRow(
                                FormattableString.Invariant($"p{i:D2}"),
                                -6 + (0.06 * i),
                                -7 + (0.06 * i),
                                -5.3 + (0.06 * i),
                                i / 60.0
                            )),
                    ]
                )
            ),
            "levels, open" => LevelsPicture.Draw(Levels(theme, new("ada", -5, null, -4, 0.9), new("ben", -4.5, -30, null, 0.95))),
            "level curve" => LevelCurvePicture.Draw(LevelCurve(theme)),
            "kept" => PromisePicture.Draw(
                Kept(
                    theme,
                    new(0.82, 0.86, 0.77, 0.92, 71, 83),
                    new(0.91, 0.93, 0.86, 0.97, 78, 84),
                    new(0.955, 0.9, 0.79, 0.96, 45, 50),
                    new(0.991, 1, 0.88, 1, 27, 27)
                )
            ),
            "kept, few" => PromisePicture.Draw(Kept(theme, new PromisePoint(0.96, 0, 0, 0.56, 0, 3))),
            "kept, none" => PromisePicture.Draw(Kept(theme)),
            "days" => DaysPicture.Draw(
                Days(theme, new("2026-03-01", -0.4, -0.9, 0), new("2026-03-08", 0.1, -0.3, 0.6), new("2026-03-15", 0.3, -0.1, 0.9))
            ),
            "days, many" => DaysPicture.Draw(
                Days(
                    theme,
                    [
                        .. Enumerable
                            .Range(1, 40)
                            .Select(i => new DayPoint($"day {i}\nRobin", Math.Sin(i), Math.Sin(i) - 0.8, Math.Sin(i) + 1.1)),
                    ]
                )
            ),
            "days, one" => DaysPicture.Draw(Days(theme, new DayPoint("not recorded", 0, -0.7, 0.7))),
            "fitted" => FittedPicture.Draw(
                Fitted(theme, [0.96, 0.92, 0.38, 0.71, 0.29, 0.04], [0.92, 0.83, 0.88, 0.35, 0.2, 0.14], step: 1)
            ),
            "fitted, crowded" => FittedPicture.Draw(
                Fitted(
                    theme,
                    [1, 1, 0.9, 0.9, 0.8, 0.5, 0.4, 0.2, 0.1, 0],
                    [0.97, 0.96, 0.93, null, 0.72, 0.6, 0.4, 0.3, 0.1, 0.05],
                    step: 1 / 3.0
                )
            ),
            "residuals" => ResidualsPicture.Draw(Residuals(theme, [0.4, 0.9, -1.2, 0.1, -2.4, 0.8, 2.1, -0.3, 0.7, -0.6])),
            "residuals, far" => ResidualsPicture.Draw(Residuals(theme, [-7.5, 0.2, 0.3, 12, -1, 1])),
            _ => throw new ArgumentOutOfRangeException(nameof(name), name, null),
        };

    public static FramesScene Frames(PictureTheme theme, int[] one, int[] two, int[] three, int budget) =>
        new()
        {
            Words = Words("Use a support from 1/4\u00A0s on: one keeper takes more than 100\u00A0frames"),
            Series = [.. new[] { one, two, three }.Select(Points)],
            Shown = (-6.5, 0.5),
            Budget = budget,
            PassesBudget = one.Length < 6,
            Palette = Palette.Of(theme),
        };

    private static ImmutableArray<FramesPoint> Points(int[] frames) =>
        [.. frames.Select((f, i) => new FramesPoint(ShutterSpeed.OneOver(new[] { 60, 30, 15, 8, 4, 2 }[i]).Log2Seconds, f, f > 12))];

    private static CountScene Count(PictureTheme theme, int frames)
    {
        ImmutableArray<double> Spread(double centre, double width)
        {
            var heights = Enumerable
                .Range(0, frames + 1)
                .Select(k => Math.Exp(-Math.Pow((k - (centre * frames)) / (width * frames), 2)))
                .ToArray();
            return [.. heights.Select(h => h / heights.Sum())];
        }

        return new CountScene
        {
            Words = Words("12\u00A0frames at 1/15\u00A0s come home empty 9\u00A0% of the time in one burst, 4\u00A0% in bursts of 3"),
            OneBurst = Spread(0.45, 0.4),
            Bursts = Spread(0.5, 0.25),
            BurstsName = "bursts of 3",
            Palette = Palette.Of(theme),
        };
    }

    private static SetupsScene Setups(PictureTheme theme, int count)
    {
        var names = new[] { "dial 85 mm", "dial 85 mm stabilised", "room 24 mm", "movement close", "pendulum 35 mm", "tower clock 200 mm" };
        ImmutableArray<(double, int, int)> counts = [(125, 6, 6), (60, 6, 6), (30, 6, 4), (15, 6, 2), (8, 6, 0)];
        return new SetupsScene(
            Words("Half the frames are keepers at 1/60\u00A0s with dial 85 mm, at 1/8\u00A0s with dial 85 mm stabilised"),
            [
                .. names
                    .Take(count)
                    .Select(
                        (n, i) => new SetupLine(n, Scenes.Make(0.5, -6 + (0.7 * i), 1.6, i == 3 ? 0.45 : 0.97, 0.4 + (0.2 * i), counts))
                    ),
            ],
            0.5,
            Palette.Of(theme),
            Marks.Third
        );
    }

    private static PromiseScene Kept(PictureTheme theme, params ImmutableArray<PromisePoint> points) =>
        new(Words("90\u00A0% of plans were kept, 92\u00A0% were promised to be"), points, Palette.Of(theme));

    private static DaysScene Days(PictureTheme theme, params ImmutableArray<DayPoint> days) =>
        new(Words("3\u00A0days tell no progress from luck"), days, Palette.Of(theme));

    private static FittedScene Fitted(PictureTheme theme, double[] rates, double?[] expected, double step) =>
        new(
            Words("1/60\u00A0s: 50 points below what the other speeds expect"),
            [
                .. rates.Select(
                    (rate, i) =>
                        new FittedSpeed(
                            -8 + (i * step),
                            rate,
                            Math.Max(0, rate - 0.2),
                            Math.Min(1, rate + 0.2),
                            (rate + expected[i]) / 2,
                            expected[i]
                        )
                ),
            ],
            Palette.Of(theme),
            Marks.Third
        );

    private static ResidualsScene Residuals(PictureTheme theme, double[] residuals) =>
        new(
            Words("2 of 10\u00A0residuals lie beyond \u00B12, where one in twenty does by chance"),
            [.. residuals.Select((r, i) => new ResidualPoint(-8 + (i / 2), r, "1 of 3", i % 4 != 3))],
            Palette.Of(theme),
            Marks.Third
        );

    private static StopsScene Stops(PictureTheme theme, params ImmutableArray<StopsRow> rows) =>
        new(Words("Stabiliser: lens allows speeds 2.3 stops slower"), rows, Palette.Of(theme));

    private static PictureWords Words(string title) =>
        new(
            title,
            "Robin · print",
            ["24 of 40\u00A0frames kept at 7\u00A0speeds in 2\u00A0sessions. Judged on a print.", "For another day: posterior, priors-1."],
            "What is drawn, in words."
        );

    private static LevelsScene Levels(PictureTheme theme, params ImmutableArray<LevelRow> rows) =>
        new(
            Words("Half the frames are keepers at 1/30\u00A0s with ada"),
            "photographer",
            rows,
            -4.4,
            (-8, -2),
            Marks.Third,
            Palette.Of(theme)
        );

    private static LevelCurveScene LevelCurve(PictureTheme theme)
    {
        ImmutableArray<double> exposures = [.. Enumerable.Range(0, 33).Select(i => -8 + (0.2 * i))];
        ImmutableArray<double> At(double half) => [.. exposures.Select(x => 1 / (1 + Math.Exp(1.5 * (x - half))))];
        return new(
            Words("ada: half at 1/30\u00A0s"),
            exposures,
            At(-5),
            At(-5.5),
            At(-4.5),
            At(-4.4),
            [new(-6, 6, 6, 0.61, 1), new(-5, 3, 6, 0.19, 0.81), new(-4, 1, 6, 0.03, 0.56)],
            false,
            -5,
            Marks.Third,
            Palette.Of(theme)
        );
    }
}
