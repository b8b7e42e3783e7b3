namespace Handhold.Cli;

/// <summary>Files that are written whole or not at all.</summary>
internal static class WholeFile
{
    /// <summary>Writes through a neighbour that takes the place of <paramref name="path"/> only when it is complete.</summary>
    public static void Write(string path, Action<string> write)
    {
        var folder = Path.GetDirectoryName(Path.GetFullPath(path))!;
        var draft = Path.Combine(folder, $".{Guid.NewGuid():N}{Path.GetExtension(path)}");
        try
        {
            write(draft);
            File.Move(draft, path, overwrite: true);
        }
        finally
        {
            File.Delete(draft);
        }
    }

    public static void WriteText(string path, string text) => Write(path, draft => File.WriteAllText(draft, text));
}
