using FsCheck.Xunit;
using static Handhold.ShutterSpeed;

namespace Handhold.Tables.Tests;

public class FrameTablesTests
{
    private sealed record Shot(double Seconds, int Stars, string Lens);

    [Fact]
    public void Any_records_make_a_table_by_a_mapping()
    {
        Shot[] shots = [new(0.1, 4, "85"), new(0.1, 0, "85"), new(0.5, 1, "35")];
        var table = shots.ToFrameTable(
            s => new ShotFrame(FromSeconds(s.Seconds)) { Grade = s.Stars, Conditions = Conditions.None with { Setup = s.Lens } },
            keeperFromGrade: 3
        );
        Assert.Equal((3, 1), (table.Frames, table.Keepers));
        Assert.Equal("35", table[2].Conditions.Setup);
    }

    [Fact]
    public void Every_wrong_record_is_named_by_its_number()
    {
        var errors = Assert
            .Throws<TableException>(() => new[] { 3, 7, 9 }.ToFrameTable(keepers => new FrameCell(OneOver(60), 6, keepers)))
            .Errors;
        Assert.Equal([2, 3], errors.Select(e => e.Line));
        Assert.Contains("7 keepers in 6 frames is impossible", errors[0].Message, StringComparison.Ordinal);
    }

    [Fact]
    public void Pooling_joins_what_is_equal_and_keeps_apart_what_differs()
    {
        FrameTable table =
        [
            new(OneOver(60), 2, 1) { Conditions = Conditions.None with { Session = "b" } },
            new(OneOver(60), 2, 2) { Conditions = Conditions.None with { Session = "a" } },
            new(OneOver(60), 3, 0) { Conditions = Conditions.None with { Session = "b" }, Unjudged = 2 },
        ];
        FrameTable pooled =
        [
            new(OneOver(60), 2, 2) { Conditions = Conditions.None with { Session = "a" } },
            new(OneOver(60), 5, 1) { Conditions = Conditions.None with { Session = "b" }, Unjudged = 2 },
        ];
        Assert.Equal(pooled, table.Pooled());
    }

    [Property(Replay = "(2025,131)", MaxTest = 200)]
    public void Merging_is_commutative_and_associative_and_loses_no_frame(byte[] first, byte[] second, byte[] third)
    {
        var (a, b, c) = (Table(first), Table(second), Table(third));
        Assert.Equal(a.Merge(b), b.Merge(a));
        Assert.Equal(a.Merge(b).Merge(c), a.Merge(b.Merge(c)));
        Assert.Equal(a.Pooled(), a.Pooled().Pooled());
        var merged = a.Merge(b).Merge(c);
        Assert.Equal(a.Frames + b.Frames + c.Frames, merged.Frames);
        Assert.Equal(a.Keepers + b.Keepers + c.Keepers, merged.Keepers);
        Assert.Equal(a.Unjudged + b.Unjudged + c.Unjudged, merged.Unjudged);
        Assert.Distinct(merged.Select(cell => (cell.Exposure, cell.Conditions)));
    }

    /// <summary>Few different conditions, so that many cells are equal; some text that could be mistaken for a boundary.</summary>
    private static FrameTable Table(byte[]? bytes) =>
        (bytes ?? []).ToFrameTable(b => new FrameCell(OneOver(15 << (b % 3)), b % 5, b % 5 / 2)
        {
            Unjudged = 1 + (b % 2),
            Conditions = Conditions.None.With(
                (b % 4) switch
                {
                    0 => "session",
                    1 => "burst",
                    2 => "wind",
                    _ => "light",
                },
                b % 8 < 4 ? "0" : "1"
            ),
        });
}
