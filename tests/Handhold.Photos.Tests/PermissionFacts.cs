using System.Runtime.InteropServices;
using System.Runtime.Versioning;

namespace Handhold.Photos.Tests;

[SupportedOSPlatform("linux")]
public class PermissionFacts
{
    private static byte[] Ordinary => new Jpeg().Exif(Shelf.Plain()).ToBytes();

    [Fact]
    public void What_may_not_be_read_is_named_and_the_rest_is_read()
    {
        using var shelf = new Shelf()
            .Put("open.jpg", Ordinary)
            .Put("open.xmp", Shelf.Packet("xmp:Rating=\"3\""))
            .Put("shut.jpg", Ordinary)
            .Put("shut/1.jpg", Ordinary);
        File.SetUnixFileMode(shelf.Place, File.GetUnixFileMode(shelf.Place) | UnixFileMode.GroupRead | UnixFileMode.GroupExecute);
        foreach (var name in new[] { "open.xmp", "shut.jpg", "shut" })
            File.SetUnixFileMode(shelf[name], UnixFileMode.None);
        var read = ByNobody(() => shelf.Read(PhotoOptions.Default with { Threads = 1 }));
        Assert.EndsWith("/open.jpg", Assert.Single(read.Photos).Path, StringComparison.Ordinal);
        Assert.Equal(
            [("shut", PhotoReason.NotPermitted), ("shut.jpg", PhotoReason.NotPermitted)],
            read.Skipped.Select(skipped => (Path.GetFileName(skipped.Path), skipped.Reason))
        );
        Assert.Equal(PhotoReason.SidecarUnread, Assert.Single(read.Remarks).Reason);
    }

    [Fact]
    public void What_vanished_after_the_walk_is_named()
    {
        using var shelf = new Shelf().Put("a.jpg", Ordinary);
        var (entries, _) = PhotoTree.Walk([shelf.Place], TestContext.Current.CancellationToken);
        File.Delete(shelf["a.jpg"]);
        Assert.Equal(PhotoReason.Vanished, new PhotoFile(PhotoOptions.Default).Read(Assert.Single(entries)).Refused);
    }

    /// <summary>Does work on a thread whose user for files is nobody, since root may read everything.</summary>
    private static PhotoImport ByNobody(Func<PhotoImport> work)
    {
        PhotoImport? done = null;
        Thread thread = new(() =>
        {
            _ = SetUserForFiles(65534);
            done = work();
        });
        thread.Start();
        thread.Join();
        return done!;
    }

    [DllImport("libc", EntryPoint = "setfsuid")]
    [DefaultDllImportSearchPaths(DllImportSearchPath.SafeDirectories)]
    private static extern int SetUserForFiles(uint user);
}
