using System.Globalization;

namespace Handhold.Tests;

/// <summary>Finds the reference cases by walking up to the folder that holds the solution.</summary>
internal static class GoldenFolder
{
    internal static string PathOf(string caseName, string file)
    {
        for (var folder = new DirectoryInfo(AppContext.BaseDirectory); folder is not null; folder = folder.Parent)
            if (File.Exists(Path.Combine(folder.FullName, "Handhold.slnx")))
                return Path.Combine(folder.FullName, "shared", "golden", caseName, file);
        throw new DirectoryNotFoundException($"No Handhold.slnx above {AppContext.BaseDirectory}.");
    }

    /// <summary>The rows of a comma-separated table, as column name to text; no quoting in our tables.</summary>
    internal static IReadOnlyList<IReadOnlyDictionary<string, string>> Rows(string caseName, string file)
    {
        var lines = File.ReadAllLines(PathOf(caseName, file));
        var names = lines[0].Split(',');
        return [.. lines.Skip(1).Select(line => names.Zip(line.Split(',')).ToDictionary(pair => pair.First, pair => pair.Second))];
    }

    internal static double Number(this IReadOnlyDictionary<string, string> row, string column) =>
        double.Parse(row[column], CultureInfo.InvariantCulture);
}
