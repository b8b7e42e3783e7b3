using System.Globalization;
using Microsoft.Data.Analysis;
using static Handhold.ShutterSpeed;

namespace Handhold.Tables.Tests;

public class DataFrameTests
{
    private static readonly FrameTable s_table =
    [
        new(OneOver(60), 6, 5)
        {
            Unjudged = 1,
            SecondLooks = new(2, 1, 0),
            Conditions = Conditions.None with { Setup = "=dial, \"85\" mm", FocalLength = 84.7, Session = "2026-11-20" },
        },
        new(FromSeconds(1 / 3.0), 6, 0) { Conditions = Conditions.None.With("wind", "strong") },
    ];

    [Fact]
    public void A_table_comes_back_from_a_data_frame_to_the_last_bit() => Assert.Equal(s_table, s_table.ToDataFrame().ToFrameTable());

    [Fact]
    public void What_was_not_recorded_is_null_and_numbers_are_double()
    {
        var frame = s_table.ToDataFrame();
        Assert.Equal(
            [
                "exposure_s",
                "frames",
                "keepers",
                "unjudged",
                "kept_twice",
                "kept_once",
                "kept_never",
                "setup",
                "session",
                "focal_mm",
                "wind",
            ],
            frame.Columns.Select(c => c.Name)
        );
        Assert.Equal(typeof(double), frame["exposure_s"].DataType);
        Assert.Equal(84.7, frame["focal_mm"][0]);
        Assert.Null(frame["focal_mm"][1]);
        Assert.Null(frame["wind"][0]);
        Assert.Equal(1, frame["setup"].NullCount);
    }

    [Fact]
    public void Single_frames_come_back_with_those_not_judged_still_not_judged()
    {
        ShotFrame[] frames =
        [
            new(OneOver(30), Verdict.Keeper),
            new(OneOver(30), Verdict.Keeper) { SecondVerdict = Verdict.Reject },
            new(OneOver(30), Verdict.Reject) { Conditions = Conditions.None with { Burst = "1" } },
            new(OneOver(30)),
        ];
        var frame = frames.ToDataFrame();
        Assert.Null(frame["keeper"][3]);
        Assert.Equal(1, frame["second_verdict"].Length - frame["second_verdict"].NullCount);
        Assert.Equal(FrameTable.FromFrames(frames), frame.ToFrameTable());
    }

    [Fact]
    public void Grades_need_their_threshold_and_missing_ones_are_not_grade_zero()
    {
        DataFrame frame = new(
            new DoubleDataFrameColumn("exposure_s", [0.1, 0.1, 0.1]),
            new Int32DataFrameColumn("grade", new int?[] { 3, 0, null })
        );
        var table = frame.ToFrameTable(new() { KeeperFromGrade = 2 });
        Assert.Equal((2, 1, 1), (table.Frames, table.Keepers, table.Unjudged));
    }

    [Fact]
    public void A_null_count_is_an_error_and_not_zero()
    {
        DataFrame frame = new(
            new DoubleDataFrameColumn("exposure_s", [0.1, 0.2]),
            new Int32DataFrameColumn("frames", new int?[] { 6, 6 }),
            new Int32DataFrameColumn("keepers", new int?[] { 5, null })
        );
        var error = Assert.Single(Assert.Throws<TableException>(() => frame.ToFrameTable()).Errors);
        Assert.Equal(("the data frame", 3, "keepers"), (error.File, error.Line, error.Column));
    }

    [Fact]
    public void The_culture_does_not_matter()
    {
        var culture = CultureInfo.CurrentCulture;
        try
        {
            CultureInfo.CurrentCulture = new CultureInfo("de-DE");
            Assert.Equal(s_table, s_table.ToDataFrame().ToFrameTable());
        }
        finally
        {
            CultureInfo.CurrentCulture = culture;
        }
    }

    [Fact]
    public void Answers_and_bands_are_what_the_curve_said()
    {
        FrameTable table = [new(OneOver(60), 6, 6), new(OneOver(15), 6, 3), new(OneOver(8), 6, 0)];
        var curve = (KeeperModel.Default with { Luck = LuckKind.None, Ceiling = Ceiling.One })
            .Fit(table, cancellation: TestContext.Current.CancellationToken)
            .Only;
        var quick = AnswerOptions.Default with { CheckPriors = false };
        var rate = curve.RateAt(OneOver(30), quick);
        var frames = curve.FramesNeeded(OneOver(15), 1, 0.95, quick, TestContext.Current.CancellationToken);
        var far = curve.RateAt(FromSeconds(30), quick);
        var frame = new Answer[] { rate, frames, far, curve.HalfKeeperExposure(quick), curve.Slowest(0.8, 0.9, quick) }.ToDataFrame();
        Assert.Equal(["rate", "frames", "rate", "exposure", "slowest"], frame["question"].Cast<string>());
        Assert.Equal(rate.Rate!.Median, frame["median"][0]);
        Assert.Equal(frames.Frames, frame["frames"][1]);
        Assert.Null(frame["median"][2]);
        Assert.Contains("OutsideTestedRange", (string)frame["status"][2], StringComparison.Ordinal);
        Assert.Null(frame["frames"][0]);

        var band = curve.Band(OneOver(60), OneOver(8), 11, quick);
        var points = band.ToDataFrame();
        Assert.Equal(band.Median, points["median"].Cast<double>());
        Assert.Equal(band.Log2Seconds, points["log2_seconds"].Cast<double>());
    }
}
