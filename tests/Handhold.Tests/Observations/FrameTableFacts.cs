using System.Reflection;
using static Handhold.ShutterSpeed;

namespace Handhold.Tests.Observations;

public class FrameTableFacts
{
    private static readonly FrameTable Monday =
    [
        new(OneOver(60), frames: 6, keepers: 6),
        new(OneOver(30), frames: 6, keepers: 5),
        new(OneOver(15), frames: 6, keepers: 3) { Unjudged = 2 },
        new(OneOver(8), frames: 6, keepers: 0),
    ];

    [Fact]
    public void A_table_is_written_as_a_collection_and_keeps_its_order()
    {
        Assert.Equal((4, 24, 14, 2), (Monday.Count, Monday.Frames, Monday.Keepers, Monday.Unjudged));
        Assert.Equal([OneOver(60), OneOver(30), OneOver(15), OneOver(8)], Monday.Select(cell => cell.Exposure));
        Assert.Equal(3, Monday[2].Keepers);
    }

    [Fact]
    public void A_table_says_its_counts() => Assert.Equal("14 keepers of 24 frames, 4 exposures, 2 not judged", Monday.ToString());

    [Fact]
    public void Tables_join_without_changing()
    {
        FrameTable spread = [.. Monday, .. Monday];
        Assert.Equal(spread, Monday.Concat(Monday));
        Assert.Equal((8, 4), (spread.Count, Monday.Count));
    }

    [Fact]
    public void A_cell_without_frames_is_refused_unless_some_were_not_judged()
    {
        var error = Assert.Throws<CellException>(() => FrameTable.Create(new(OneOver(8), 1, 0), new(OneOver(4), 0, 0)));
        Assert.StartsWith("Cell 2 at 1/4 s: it holds no frames", error.Message, StringComparison.Ordinal);
        Assert.Equal(3, FrameTable.Create(new FrameCell(OneOver(4), 0, 0) { Unjudged = 3 }).Unjudged);
        Assert.Equal("Cell 1", Assert.Throws<CellException>(() => FrameTable.Create(null!, null!)).Place);
    }

    [Fact]
    public void A_distance_too_short_for_the_lens_is_refused_where_the_magnification_rests_on_it()
    {
        var close = new Conditions { FocalLength = 100, SubjectDistance = 0.3 };
        var error = Assert.Throws<CellException>(() => FrameTable.Create(new FrameCell(OneOver(8), 1, 0) { Conditions = close }));
        Assert.StartsWith("Cell 1 at 1/8 s: a 100 mm lens cannot focus 0.3 m from the sensor", error.Message, StringComparison.Ordinal);
        Assert.Single(FrameTable.Create(new FrameCell(OneOver(8), 1, 0) { Conditions = close with { Magnification = 1 } }));
    }

    [Fact]
    public void Verdicts_become_counts_frame_by_frame()
    {
        var table = FrameTable.FromFrames([
            new(OneOver(60), Verdict.Keeper),
            new(OneOver(60), Verdict.Reject),
            new(OneOver(30)) { Conditions = new() { Session = "Tuesday" } },
        ]);
        Assert.Equal((3, 2, 1, 1), (table.Count, table.Frames, table.Keepers, table.Unjudged));
        Assert.Equal("Tuesday", table[2].Conditions.Session);
    }

    [Theory]
    [InlineData(0, 0)]
    [InlineData(2, 0)]
    [InlineData(3, 1)]
    [InlineData(9, 1)]
    public void Grades_from_the_threshold_up_are_keepers(int grade, int keepers)
    {
        var table = FrameTable.FromFrames([new(OneOver(60)) { Grade = grade }], keeperFromGrade: 3);
        Assert.Equal((1, keepers), (table.Frames, table.Keepers));
    }

    [Fact]
    public void A_grade_alone_needs_a_threshold()
    {
        var error = Assert.Throws<CellException>(() => FrameTable.FromFrames([new(OneOver(60)), new(OneOver(60)) { Grade = 4 }]));
        Assert.StartsWith("Frame 2 at 1/60 s: grade 4 alone", error.Message, StringComparison.Ordinal);
        Assert.Equal(1, FrameTable.FromFrames([new(OneOver(60), Verdict.Keeper) { Grade = 4 }]).Keepers);
    }

    [Fact]
    public void A_verdict_that_contradicts_its_grade_is_refused()
    {
        var error = Assert.Throws<CellException>(() =>
            FrameTable.FromFrames([new(OneOver(60), Verdict.Reject) { Grade = 4 }], keeperFromGrade: 3)
        );
        Assert.Contains(
            "the verdict is Reject, but grade 4 makes it a Keeper where grades from 3 up are keepers",
            error.Message,
            StringComparison.Ordinal
        );
        Assert.Equal(1, FrameTable.FromFrames([new(OneOver(60), Verdict.Keeper) { Grade = 4 }], keeperFromGrade: 3).Keepers);
    }

    [Fact]
    public void Unusable_frames_cannot_be_made_keepers() =>
        Assert.Throws<ArgumentOutOfRangeException>(() => FrameTable.FromFrames([], keeperFromGrade: 0));

    [Fact]
    public void Impossible_frames_are_refused()
    {
        Assert.Throws<CellException>(() => new ShotFrame(default));
        Assert.Throws<CellException>(() => new ShotFrame(OneOver(60), (Verdict)7));
        Assert.Throws<CellException>(() => new ShotFrame(OneOver(60)) { Grade = -1 });
    }

    [Theory]
    [InlineData(typeof(FrameCell))]
    [InlineData(typeof(FrameTable))]
    [InlineData(typeof(ShotFrame))]
    public void No_count_can_be_given_as_a_proportion_or_a_weight(Type type) =>
        Assert.DoesNotContain(
            type.GetConstructors().Concat<MethodBase>(type.GetMethods()).SelectMany(member => member.GetParameters()),
            parameter => parameter.ParameterType == typeof(double) || parameter.ParameterType == typeof(float)
        );
}
