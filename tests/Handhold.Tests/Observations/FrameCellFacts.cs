using static Handhold.ShutterSpeed;

namespace Handhold.Tests.Observations;

public class FrameCellFacts
{
    [Fact]
    public void More_keepers_than_frames_is_refused_with_the_numbers_the_place_and_the_remedy()
    {
        var error = Assert.Throws<CellException>(() => new FrameCell(OneOver(30), frames: 6, keepers: 7));
        Assert.Equal("7 keepers in 6 frames is impossible.", error.Problem);
        Assert.StartsWith(
            "The cell at 1/30 s: 7 keepers in 6 frames is impossible. Count each frame once",
            error.Message,
            StringComparison.Ordinal
        );
    }

    [Theory]
    [InlineData(-1, 0, 0, "-1 frames")]
    [InlineData(1, -1, 0, "-1 keepers")]
    [InlineData(1, 0, -2, "-2 frames not judged")]
    public void Negative_counts_are_refused(int frames, int keepers, int unjudged, string said)
    {
        var error = Assert.Throws<CellException>(() => new FrameCell(OneOver(30), frames, keepers) { Unjudged = unjudged });
        Assert.Contains(said, error.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void A_cell_needs_a_speed() => Assert.Throws<CellException>(() => new FrameCell(default, 1, 0));

    [Fact]
    public void Equal_cells_are_equal() => Assert.Equal(Cell(), Cell());

    [Fact]
    public void A_cell_reads_as_people_say_it()
    {
        Assert.Equal("5 keepers of 6 frames at 1/30 s", new FrameCell(OneOver(30), 6, 5).ToString());
        Assert.Equal("5 keepers of 6 frames at 1/30 s, 2 not judged", new FrameCell(OneOver(30), 6, 5) { Unjudged = 2 }.ToString());
    }

    private static FrameCell Cell() =>
        new(OneOver(30), 6, 5)
        {
            Conditions = new() { Photographer = "Ada", Others = Conditions.None.Others.Add("lens", "50") },
        };
}
