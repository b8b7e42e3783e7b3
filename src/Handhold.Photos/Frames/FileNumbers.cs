using System.Globalization;

namespace Handhold.Photos;

/// <summary>The numbers that a camera gave files: three to five digits at the end of a name, counted for each folder and beginning of names.</summary>
internal sealed class FileNumbers
{
    /// <summary>Beyond so many missing numbers a camera began to count anew, or another card was in it.</summary>
    private const int MostMissing = 100;

    private const int FewestDigits = 3;
    private const int MostDigits = 5;

    private readonly HashSet<(string Folder, string Beginning, int Number)> _present = [];

    /// <param name="paths">All photographs that were found, taken or not.</param>
    public FileNumbers(IEnumerable<string> paths)
    {
        foreach (var file in paths.Select(Of).OfType<(string Folder, string Beginning, int Number)>())
        {
            _present.Add(file);
            _present.Add(file with { Folder = Above(file.Folder) });
        }
    }

    public static (string Folder, string Beginning, int Number)? Of(string path)
    {
        var name = Path.GetFileNameWithoutExtension(path.AsSpan());
        var beginning = name.TrimEnd("0123456789");
        var digits = name.Length - beginning.Length;
        var end = path.LastIndexOf('/');
        return digits is >= FewestDigits and <= MostDigits
            ? (
                end < 0 ? "" : path[..end],
                beginning.ToString(),
                int.Parse(name[^digits..], NumberStyles.None, CultureInfo.InvariantCulture)
            )
            : null;
    }

    /// <summary>Numbers between those of two neighbours in a folder that no file there, below it or beside it has.</summary>
    public int MissingBetween(string first, string second)
    {
        if (Of(first) is not var (folder, beginning, from) || Of(second) is not var (other, same, until))
            return 0;
        return (folder, beginning) == (other, same) && until - from - 1 is > 0 and <= MostMissing
            ? Enumerable
                .Range(from + 1, until - from - 1)
                .Count(number => !_present.Contains((folder, beginning, number)) && !_present.Contains((Above(folder), beginning, number)))
            : 0;
    }

    private static string Above(string folder) => folder.LastIndexOf('/') is var end and > 0 ? folder[..end] : "";
}
