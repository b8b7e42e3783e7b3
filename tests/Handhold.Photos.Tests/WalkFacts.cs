using System.Diagnostics;

namespace Handhold.Photos.Tests;

public class WalkFacts
{
    private static byte[] Ordinary => new Jpeg().Exif(Shelf.Plain()).ToBytes();

    [Fact]
    public void Folders_are_read_with_all_that_is_in_them_in_byte_order()
    {
        using var shelf = new Shelf().Put("b/2.jpg", Ordinary).Put("a/b/c/3.jpg", Ordinary).Put("b/1.JPG", Ordinary);
        Assert.Equal(
            ["a/b/c/3.jpg", "b/1.JPG", "b/2.jpg"],
            shelf.Read().Photos.Select(photo => Path.GetRelativePath(shelf.Place, photo.Path))
        );
    }

    [Fact]
    public void A_loop_of_links_is_not_walked()
    {
        using var shelf = new Shelf().Put("a/1.jpg", Ordinary);
        Directory.CreateSymbolicLink(shelf["a/again"], shelf.Place);
        var read = shelf.Read();
        Assert.Single(read.Photos);
        Assert.Equal(PhotoReason.Link, Assert.Single(read.Skipped).Reason);
    }

    [Fact]
    public void A_link_to_a_photograph_is_read_and_one_to_nothing_or_itself_is_not()
    {
        using Shelf shelf = new();
        using var elsewhere = new Shelf().Put("1.jpg", Ordinary);
        File.CreateSymbolicLink(shelf["good.jpg"], elsewhere["1.jpg"]);
        File.CreateSymbolicLink(shelf["gone.jpg"], elsewhere["2.jpg"]);
        File.CreateSymbolicLink(shelf["self.jpg"], shelf["self.jpg"]);
        var read = shelf.Read();
        Assert.Single(read.Photos);
        Assert.Equal([PhotoReason.Link, PhotoReason.Link], read.Skipped.Select(skipped => skipped.Reason));
    }

    [Fact]
    public void A_name_that_is_no_text_is_skipped_with_its_reason()
    {
        using var shelf = new Shelf().Put("a.jpg", Ordinary);
        Process.Start("sh", ["-c", "cp \"$1/a.jpg\" \"$1/$(printf 'b\\377').jpg\"", "sh", shelf.Place]).WaitForExit();
        var read = shelf.Read();
        Assert.Single(read.Photos);
        Assert.Equal(PhotoReason.Vanished, Assert.Single(read.Skipped).Reason);
        Process.Start("rm", ["-r", shelf.Place]).WaitForExit(); // such a name cannot be deleted from here
        Directory.CreateDirectory(shelf.Place);
    }

    [Fact]
    public void A_pipe_is_not_waited_for()
    {
        using Shelf shelf = new();
        shelf.Put("good.jpg", Ordinary);
        Process.Start("mkfifo", [shelf["pipe.jpg"], shelf["good.xmp"]]).WaitForExit();
        File.CreateSymbolicLink(shelf["link.jpg"], shelf["pipe.jpg"]);
        var read = shelf.Read();
        Assert.Equal([PhotoReason.Empty, PhotoReason.Empty], read.Skipped.Select(skipped => skipped.Reason));
        Assert.Equal(PhotoReason.SidecarUnread, Assert.Single(read.Remarks).Reason);
    }

    [Fact]
    public void The_same_file_named_twice_is_one_photograph()
    {
        using var shelf = new Shelf().Put("a/1.jpg", Ordinary);
        var read = Photographs.Read([shelf.Place, shelf["a"], shelf["a/1.jpg"]], cancellation: TestContext.Current.CancellationToken);
        Assert.Single(read.Photos);
    }

    [Fact]
    public void A_place_that_does_not_exist_is_an_error() =>
        Assert.Throws<FileNotFoundException>(() =>
            Photographs.Read(["/no/such/place"], cancellation: TestContext.Current.CancellationToken)
        );

    [Fact]
    public void One_thread_and_many_give_the_same()
    {
        using Shelf shelf = new();
        for (var i = 0; i < 200; i++)
            shelf.Put($"{i % 7}/{i}.jpg", i % 11 == 0 ? Ordinary[..20] : new Jpeg().Exif(Shelf.Plain(denominator: (uint)i + 1)).ToBytes());
        var (one, many) = (shelf.Read(PhotoOptions.Default with { Threads = 1 }), shelf.Read(PhotoOptions.Default with { Threads = 8 }));
        Assert.Equal(one.Photos.Select(photo => (photo.Path, photo.Frame)), many.Photos.Select(photo => (photo.Path, photo.Frame)));
        Assert.Equal(one.Skipped.Select(skipped => skipped.ToString()), many.Skipped.Select(skipped => skipped.ToString()));
    }

    [Fact]
    public void Reading_stops_when_it_is_cancelled()
    {
        using var shelf = new Shelf().Put("1.jpg", Ordinary);
        Assert.ThrowsAny<OperationCanceledException>(() =>
            Photographs.Read([shelf.Place], cancellation: new CancellationToken(canceled: true))
        );
    }

    [Fact]
    public void No_photograph_is_changed()
    {
        using var shelf = new Shelf().Put("1.jpg", Ordinary);
        var before = File.GetLastWriteTimeUtc(shelf["1.jpg"]);
        shelf.Read();
        Assert.Equal((before, true), (File.GetLastWriteTimeUtc(shelf["1.jpg"]), Ordinary.SequenceEqual(File.ReadAllBytes(shelf["1.jpg"]))));
        Assert.Single(Directory.EnumerateFiles(shelf.Place));
    }
}
