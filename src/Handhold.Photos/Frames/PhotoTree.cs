namespace Handhold.Photos;

/// <summary>Finds the files of folder trees. Links to folders are not followed, so no loop is walked.</summary>
internal sealed class PhotoTree
{
    private readonly Dictionary<string, string> _files = new(StringComparer.Ordinal);
    private readonly CancellationToken _cancellation;

    private PhotoTree(CancellationToken cancellation) => _cancellation = cancellation;

    private List<PhotoRemark> Skipped { get; } = [];

    /// <summary>The photographs of all places in byte order of their paths, each once, and what else was found.</summary>
    /// <exception cref="FileNotFoundException">A place does not exist.</exception>
    public static (PhotoEntry[] Photos, List<PhotoRemark> Skipped) Walk(IEnumerable<string> places, CancellationToken cancellation)
    {
        PhotoTree tree = new(cancellation);
        foreach (var place in places)
        {
            if (File.Exists(place))
                tree.AddWithSidecars(Path.GetFullPath(place), place);
            else if (Directory.Exists(place))
                tree.Walk(place);
            else
                throw new FileNotFoundException($"There is no file or folder {place}.", place);
        }

        return (tree.Photographs(), tree.Skipped);
    }

    private void Walk(string place)
    {
        Stack<(string Folder, string Shown)> open = new([(Path.GetFullPath(place), Path.TrimEndingDirectorySeparator(place))]);
        while (open.TryPop(out var here))
        {
            _cancellation.ThrowIfCancellationRequested();
            foreach (var entry in Entries(here.Folder, here.Shown))
            {
                var shown = $"{here.Shown}/{entry.Name}";
                if (entry is FileInfo file)
                    Add(file.FullName, shown);
                else if (entry.Attributes.HasFlag(FileAttributes.ReparsePoint))
                    Skip(shown, PhotoReason.Link);
                else
                    open.Push((entry.FullName, shown));
            }
        }
    }

    private FileSystemInfo[] Entries(string folder, string shown)
    {
        try
        {
            return [.. new DirectoryInfo(folder).EnumerateFileSystemInfos()];
        }
        catch (UnauthorizedAccessException)
        {
            Skip(shown, PhotoReason.NotPermitted);
        }
        catch (DirectoryNotFoundException)
        {
            Skip(shown, PhotoReason.Vanished);
        }
        catch (IOException)
        {
            Skip(shown, PhotoReason.NotReadable);
        }

        return [];
    }

    /// <summary>A file that was named, and the sidecars beside it, which were not.</summary>
    private void AddWithSidecars(string path, string shown)
    {
        Add(path, shown);
        if (!FileKinds.IsPhotograph(path))
            return;
        foreach (var stem in (string[])[path, Path.ChangeExtension(path, null)])
        foreach (var sidecar in FileKinds.Sidecars.Select(ending => stem + ending).Where(File.Exists))
            Add(sidecar, sidecar);
    }

    private void Add(string path, string shown)
    {
        if (FileKinds.IsPhotograph(path) || FileKinds.IsSidecar(path))
            _files.TryAdd(path, shown);
        else
            Skip(shown, PhotoReason.OtherFile);
    }

    private void Skip(string shown, PhotoReason reason) => Skipped.Add(new(PlainText.Of(shown), reason));

    private PhotoEntry[] Photographs()
    {
        Dictionary<string, string> sidecars = new(StringComparer.OrdinalIgnoreCase);
        foreach (var sidecar in _files.Keys.Where(FileKinds.IsSidecar).Order(StringComparer.Ordinal))
            sidecars.TryAdd(sidecar[..^".xmp".Length], sidecar);
        HashSet<string> used = [];
        List<PhotoEntry> photos = [];
        foreach (
            var (path, shown) in _files.Where(file => FileKinds.IsPhotograph(file.Key)).OrderBy(file => file.Value, StringComparer.Ordinal)
        )
        {
            // photo.jpg.xmp belongs to one file, photo.xmp to all of that name
            var sidecar = sidecars.GetValueOrDefault(path) ?? sidecars.GetValueOrDefault(Path.ChangeExtension(path, null));
            if (sidecar is not null)
                used.Add(sidecar);
            photos.Add(new(path, PlainText.Of(shown), sidecar));
        }

        foreach (var alone in sidecars.Values.Where(sidecar => !used.Contains(sidecar)))
            Skip(_files[alone], PhotoReason.SidecarAlone);
        return [.. photos];
    }
}
