namespace Handhold.Photos.Tests;

public class SurvivorFacts
{
    private static readonly PhotoOptions s_rated = PhotoOptions.Default with { KeeperFromRating = 1 };

    [Fact]
    public void A_number_missing_inside_a_burst_is_a_frame_not_judged_under_the_conditions_of_the_one_before()
    {
        using var shelf = Shot((1, 0, -1), (2, 1, 3), (5, 2, 3));
        var read = shelf.Read(s_rated);
        Assert.Equal((2, PhotoReason.NumbersMissing), (read.Missing, Assert.Single(read.Remarks).Reason));
        var table = read.ToTable();
        Assert.Equal((3, 2, 2), (table.Frames, table.Keepers, table.Unjudged));
        var (before, missing) = (table[1], table[2]);
        Assert.Equal((2, before.Exposure), (missing.Unjudged, missing.Exposure));
        Assert.Equal(before.Conditions.Burst, missing.Conditions.Burst);
        Assert.Equal([null, null, "likely", null], table.Select(cell => cell.Conditions["rejects_deleted"]));
        Assert.Equal($"missing after {before.Conditions["photo"]}", missing.Conditions["photo"]);
    }

    [Fact]
    public void A_deleted_frame_does_not_part_its_burst()
    {
        using var shelf = Shot((1, 0, 3), (3, 2, -1), (4, 4, -1));
        Assert.Equal([1, 2, 1], shelf.Read(s_rated).Photos.Select(photo => photo.Frame.Conditions.BurstPosition));
    }

    [Fact]
    public void A_number_missing_between_bursts_means_nothing() => Assert.Equal(0, Missing((1, 0, -1), (4, 30, 3)));

    [Fact]
    public void A_number_that_another_file_has_is_not_missing()
    {
        using var shelf = Shot((1, 0, -1), (3, 1, 3));
        shelf.Put("IMG_0002.jpg", "broken");
        Assert.Equal(0, shelf.Read(s_rated).Missing);
    }

    [Fact]
    public void A_counter_that_begins_anew_and_a_leap_mean_nothing()
    {
        Assert.Equal(0, Missing((9999, 0, -1), (1, 1, 3)));
        Assert.Equal(0, Missing((1, 0, -1), (5000, 1, 3)));
    }

    [Fact]
    public void In_a_folder_without_rejects_numbers_missing_between_bursts_count_and_it_is_said()
    {
        using var shelf = Shot((1, 0, 3), (2, 1, 3), (4, 30, 3), (5, 31, 3), (6, 32, 3));
        var read = shelf.Read(s_rated);
        Assert.Equal(1, read.Missing);
        Assert.Contains(read.Remarks, remark => remark.Reason == PhotoReason.NoRejects && remark.Path == shelf.Place);
        Assert.All(read.ToTable(), cell => Assert.Equal("likely", cell.Conditions["rejects_deleted"]));
    }

    [Fact]
    public void A_curve_of_what_was_left_says_so_unless_it_is_known_that_nothing_was_deleted()
    {
        using var shelf = Shot((1, 0, 3), (2, 1, 3), (4, 30, 3), (5, 31, 3), (6, 32, 3));
        shelf.Put("others/IMG_0007.jpg", Shelf.Plain("2026:11:20 12:05:00"), Shelf.Packet("xmp:Rating=\"-1\""));
        var read = shelf.Read(s_rated);
        var deleted = Assert.Single(Fitted(read.ToTable()).Statuses, status => status.Code == StatusCode.FramesDeleted);
        Assert.Contains("5 frames of 6 judged", deleted.Message, StringComparison.Ordinal);
        Assert.Contains("1 frame not judged", deleted.Message, StringComparison.Ordinal);
        var known = read.ToTable(photo => photo.Frame.Conditions.With("rejects_deleted", "no"));
        Assert.DoesNotContain(Fitted(known).Statuses, status => status.Code == StatusCode.FramesDeleted);

        static KeeperCurve Fitted(FrameTable table) => (KeeperModel.Default with { Estimator = Estimator.BiasReduced }).Fit(table).Only;
    }

    [Fact]
    public void A_folder_with_a_reject_or_few_keepers_or_without_a_mapping_is_not_suspected()
    {
        (int, int, int)[] keepers = [(1, 0, 3), (2, 1, 3), (3, 2, 3), (4, 3, 3)];
        Assert.Empty(Remarks(s_rated, keepers));
        Assert.Empty(Remarks(s_rated, [.. keepers, (5, 4, 3), (6, 5, -1)]));
        Assert.Empty(Remarks(PhotoOptions.Default, [.. keepers, (5, 4, 3)]));
    }

    [Fact]
    public void Frames_that_were_sorted_into_folders_are_not_missing()
    {
        using var shelf = Shot((1, 0, 3), (3, 1, 3));
        shelf.Put("rejects/IMG_0002.jpg", Shelf.Plain("2026:11:20 12:00:30"));
        Assert.Equal(0, shelf.Read(s_rated).Missing);
    }

    [Theory]
    [InlineData("a/IMG_0012.JPG", "a", "IMG_", 12)]
    [InlineData("a/b/DSC00003.ARW", "a/b", "DSC", 3)]
    [InlineData("0007.jpg", "", "", 7)]
    public void The_number_of_a_file_is_three_to_five_digits_at_the_end_of_its_name(
        string path,
        string folder,
        string beginning,
        int number
    ) => Assert.Equal((folder, beginning, number), FileNumbers.Of(path));

    [Theory]
    [InlineData("20261120_120000.jpg")]
    [InlineData("IMG_12.jpg")]
    [InlineData("IMG_0012-edited.jpg")]
    [InlineData("0012/dial.jpg")]
    public void A_time_a_date_and_other_names_are_no_number(string path) => Assert.Null(FileNumbers.Of(path));

    private static int Missing(params (int Number, int Second, int Rating)[] frames)
    {
        using var shelf = Shot(frames);
        return shelf.Read(s_rated).Missing;
    }

    private static PhotoRemark[] Remarks(PhotoOptions options, (int, int, int)[] frames)
    {
        using var shelf = Shot(frames);
        return [.. shelf.Read(options).Remarks];
    }

    private static Shelf Shot(params (int Number, int Second, int Rating)[] frames)
    {
        Shelf shelf = new();
        foreach (var (number, second, rating) in frames)
            shelf.Put($"IMG_{number:0000}.jpg", Shelf.Plain($"2026:11:20 12:00:{second:00}"), Shelf.Packet($"xmp:Rating=\"{rating}\""));
        return shelf;
    }
}
