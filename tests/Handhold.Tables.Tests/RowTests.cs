using static Handhold.ShutterSpeed;

namespace Handhold.Tables.Tests;

public class RowTests
{
    [Fact]
    public void A_row_of_counts_is_a_cell_of_frames() =>
        Assert.Equal(
            [new FrameCell(OneOver(60), 6, 5), new FrameCell(OneOver(8), 4, 0) { Unjudged = 2 }],
            Text.Read("exposure,frames,keepers,unjudged\n1/60,6,5,\n1/8 s,4,0,2\n")
        );

    [Theory]
    [InlineData("yes", 1, 1, 0)]
    [InlineData("No", 1, 0, 0)]
    [InlineData("TRUE", 1, 1, 0)]
    [InlineData("false", 1, 0, 0)]
    [InlineData("1", 1, 1, 0)]
    [InlineData("0", 1, 0, 0)]
    [InlineData("", 0, 0, 1)]
    public void A_verdict_makes_one_frame_judged_or_not(string keeper, int frames, int keepers, int unjudged) =>
        Assert.Equal(
            new FrameCell(OneOver(60), frames, keepers) { Unjudged = unjudged },
            Text.Read($"exposure,keeper\n1/60,{keeper}\n")[0]
        );

    [Fact]
    public void A_grade_is_a_verdict_once_a_threshold_is_set()
    {
        var table = Text.Read("exposure,grade\n1/60,3\n1/60,1\n1/60,\n", new() { KeeperFromGrade = 2 });
        Assert.Equal((2, 1, 1), (table.Frames, table.Keepers, table.Unjudged));
        Assert.Equal("3", table[0].Conditions["grade"]);
    }

    [Fact]
    public void Beside_a_verdict_a_grade_is_kept_by_name()
    {
        var cell = Text.Read("exposure,keeper,grade\n1/60,yes,3\n")[0];
        Assert.Equal((1, "3"), (cell.Keepers, cell.Conditions.Others["grade"]));
    }

    [Fact]
    public void Every_known_condition_lands_in_its_property()
    {
        var conditions = Text.Read(
            "exposure_s,frames,keepers,photographer,setup,criterion,judge,cause,session,burst,burst_position,order,focal_mm,crop,focal_eq_mm,"
                + "pixel_um,stabiliser_stops,stabiliser_mode,support,magnification,subject_distance_m,subject_motion,subject_speed_mm_s,lamp\n"
                + "0.1,1,1,Robin,room,print,Kim,shake,May,b1,2,17,35,1.5,52.5,3.9,5,lens,rail,0.01,2.5,slight,120.5,warm\n"
        )[0].Conditions;
        Assert.Equal(
            new Conditions
            {
                Photographer = "Robin",
                Setup = "room",
                Criterion = Criterion.Print,
                Judge = "Kim",
                Cause = "shake",
                Session = "May",
                Burst = "b1",
                BurstPosition = 2,
                Order = 17,
                FocalLength = 35,
                Crop = 1.5,
                EquivalentFocalLength = 52.5,
                PixelPitch = 3.9,
                StabiliserStops = 5,
                StabiliserMode = "lens",
                Support = "rail",
                Magnification = 0.01,
                SubjectDistance = 2.5,
                SubjectMotion = "slight",
                SubjectSpeed = 120.5,
                Others = Conditions.None.Others.Add("lamp", "warm"),
            },
            conditions
        );
    }

    [Fact]
    public void Every_condition_of_the_core_has_a_column() =>
        Assert.All(
            Conditions.ColumnNames,
            name =>
                Assert.Equal(
                    "1",
                    Text.Read($"exposure,keeper,{name}\n1/60,yes,1\n")[0].Conditions is { Others.Count: 0 } c ? c[name] : null
                )
        );

    [Fact]
    public void An_empty_label_is_not_recorded_and_never_a_name()
    {
        var conditions = Text.Read("exposure,keeper,photographer,setup,focal_mm,lamp\n1/60,yes,,\"  \",,\"\"\n")[0].Conditions;
        Assert.Equal(Conditions.None, conditions);
    }

    [Fact]
    public void Numbers_in_text_columns_stay_text() =>
        Assert.Equal(
            ("007", "1,50", "1e3"),
            Text.Read("exposure;keeper;session;setup;lamp\n1/60;yes;007;1,50;1e3\n")[0].Conditions is var c
                ? (c.Session, c.Setup, c.Others["lamp"])
                : default
        );

    [Fact]
    public void Comments_and_empty_rows_are_skipped_and_counted_as_lines()
    {
        var error = Text.Error("# invented\n\n# data\nexposure,keeper\n# a pause, \"quoted\n1/60,yes\n,\n\n1/60,perhaps\n");
        Assert.Equal(9, error.Line);
    }

    [Fact]
    public void The_demo_table_is_read_whole()
    {
        var folder = new DirectoryInfo(AppContext.BaseDirectory);
        while (!File.Exists(Path.Combine(folder.FullName, "Handhold.slnx")))
        {
            folder = folder.Parent!;
        }
        var path = Path.Combine(folder.FullName, "shared", "demo", "clock-museum.csv");
        var rows = File.ReadLines(path).Count(l => !l.StartsWith('#')) - 1;
        var table = TableReader.Read(path, cancellation: TestContext.Current.CancellationToken);
        Assert.Equal(rows, table.Frames + table.Unjudged);
    }
}
