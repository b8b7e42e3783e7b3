namespace Handhold.Photos.Tests;

public class OccasionFacts
{
    [Fact]
    public void A_burst_ends_at_a_pause_longer_than_a_second()
    {
        using var shelf = Shot("12:00:00", "12:00:01", "12:00:03", "12:00:04");
        Assert.Equal([("12:00:00", 1), ("12:00:00", 2), ("12:00:03", 1), ("12:00:03", 2)], Bursts(shelf.Read()));
    }

    [Fact]
    public void The_pause_can_be_set()
    {
        using var shelf = Shot("12:00:00", "12:00:01", "12:00:03");
        Assert.Equal(3, Bursts(shelf.Read(PhotoOptions.Default with { BurstGap = TimeSpan.FromSeconds(2) })).Max(burst => burst.Place));
        Assert.Equal(1, Bursts(shelf.Read(PhotoOptions.Default with { BurstGap = TimeSpan.Zero })).Max(burst => burst.Place));
    }

    [Fact]
    public void A_pause_begins_where_the_exposure_ends()
    {
        using var shelf = new Shelf()
            .Put("a.jpg", Shelf.Plain("2026:11:20 12:00:00").Ratio(HeaderTags.ExposureTime, 4, 1))
            .Put("b.jpg", Shelf.Plain("2026:11:20 12:00:05").Ratio(HeaderTags.ExposureTime, 4, 1));
        Assert.Equal([1, 2], Bursts(shelf.Read()).Select(burst => burst.Place));
    }

    [Theory]
    [InlineData("5", 5_000_000)]
    [InlineData("05", 500_000)]
    [InlineData("123456789", 1_234_567)]
    [InlineData("x", 0)]
    public void Parts_of_a_second_are_digits_behind_the_point(string digits, int ticks)
    {
        using var shelf = new Shelf().Put("a.jpg", Shelf.Plain().Text(HeaderTags.SubSecond, digits));
        Assert.Equal(new DateTime(2026, 11, 20, 12, 0, 0).AddTicks(ticks), shelf.Read().Photos[0].Taken);
    }

    [Fact]
    public void Every_day_is_a_session_unless_a_gap_is_given()
    {
        using var shelf = new Shelf()
            .Put("a.jpg", Shelf.Plain("2026:11:20 09:00:00"))
            .Put("b.jpg", Shelf.Plain("2026:11:20 23:59:59"))
            .Put("c.jpg", Shelf.Plain("2026:11:21 00:00:00"));
        Assert.Equal(["2026-11-20", "2026-11-20", "2026-11-21"], Sessions(shelf.Read()));
        Assert.Equal(
            ["2026-11-20 09:00:00", "2026-11-20 23:59:59", "2026-11-20 23:59:59"],
            Sessions(shelf.Read(PhotoOptions.Default with { SessionGap = TimeSpan.FromHours(2) }))
        );
    }

    [Fact]
    public void Two_cameras_at_once_shoot_two_bursts()
    {
        using var shelf = new Shelf()
            .Put("a.jpg", Shelf.Plain("2026:11:20 12:00:00"))
            .Put("b.jpg", Shelf.Plain("2026:11:20 12:00:01").Text(HeaderTags.Model, "Clock Two"))
            .Put("c.jpg", Shelf.Plain("2026:11:20 12:00:01"));
        Assert.Equal([1, 1, 2], Bursts(shelf.Read()).Select(burst => burst.Place));
    }

    [Fact]
    public void A_frame_without_a_time_belongs_to_nothing_and_says_so()
    {
        using var shelf = new Shelf().Put("a.jpg", Shelf.Plain("    :  :     :  :  "));
        var read = shelf.Read();
        Assert.Null(read.Photos[0].Taken);
        Assert.Null(read.Photos[0].Frame.Conditions.Session);
        Assert.Equal(PhotoReason.NoTime, Assert.Single(read.Remarks).Reason);
    }

    [Fact]
    public void A_raw_file_and_its_JPEG_are_one_frame()
    {
        using var shelf = new Shelf()
            .Put("a.jpg", Shelf.Plain(), Shelf.Packet("xmp:Rating=\"4\""))
            .Put("a.nef", Shelf.Plain().ToBytes())
            .Put("b.jpg", Shelf.Plain());
        var read = shelf.Read(PhotoOptions.Default with { KeeperFromRating = 1 });
        Assert.Equal(["a.nef", "b.jpg"], read.Photos.Select(photo => Path.GetFileName(photo.Path)));
        Assert.Equal(Verdict.Keeper, read.Photos[0].Frame.Verdict);
        Assert.Equal(PhotoReason.SameFrame, Assert.Single(read.Skipped).Reason);
    }

    private static Shelf Shot(params string[] times)
    {
        Shelf shelf = new();
        foreach (var (i, time) in times.Index())
            shelf.Put($"{i}.jpg", Shelf.Plain($"2026:11:20 {time}"));
        return shelf;
    }

    private static (string? Burst, int? Place)[] Bursts(PhotoImport read) =>
        [.. read.Photos.Select(photo => (photo.Frame.Conditions.Burst, photo.Frame.Conditions.BurstPosition))];

    private static string?[] Sessions(PhotoImport read) => [.. read.Photos.Select(photo => photo.Frame.Conditions.Session)];
}
