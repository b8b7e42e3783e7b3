using System.Text.RegularExpressions;
using DuckDB.NET.Data;

namespace Handhold.Tables.Tests;

/// <summary>The SQL of the page on tables, run as it stands there.</summary>
public sealed class PoolingSqlTests : IDisposable
{
    private const string Frames = """
        exposure,keeper,photographer,setup,session,burst
        1/60 s,yes,Kim,"dial, 85 mm",mon,1
        1/60 s,yes,Kim,"dial, 85 mm",mon,1
        1/60 s,no,Kim,"dial, 85 mm",mon,2
        0.5,,Kim,"dial, 85 mm",mon,2
        0.5,no,Kim,"dial, 85 mm",mon,2
        0.5,true,Kim,,tue,
        0.5,1,Kim,,tue,
        """;

    private readonly DirectoryInfo _folder = Directory.CreateTempSubdirectory("handhold-");

    public void Dispose() => _folder.Delete(recursive: true);

    [Fact]
    public void The_documented_sql_pools_frames_into_the_cells_that_pooling_gives()
    {
        var frames = Path.Combine(_folder.FullName, "frames.csv");
        var cells = Path.Combine(_folder.FullName, "cells.csv");
        File.WriteAllText(frames, Frames);
        var sql = Regex.Match(File.ReadAllText(Page()), "```sql\n(.*?)```", RegexOptions.Singleline).Groups[1].Value;
        Assert.Contains("'frames.csv'", sql, StringComparison.Ordinal);
        using DuckDBConnection connection = new("Data Source=:memory:");
        connection.Open();
        using var command = connection.CreateCommand();
#pragma warning disable CA2100 // the page is our own
        command.CommandText = sql.Replace("'frames.csv'", $"'{frames}'", StringComparison.Ordinal)
            .Replace("'cells.csv'", $"'{cells}'", StringComparison.Ordinal);
#pragma warning restore CA2100
        command.ExecuteNonQuery();
        Assert.Equal(TableReader.Read(frames).Pooled(), TableReader.Read(cells).Pooled());
        Assert.Equal(4, TableReader.Read(cells).Count);
    }

    private static string Page()
    {
        var folder = new DirectoryInfo(AppContext.BaseDirectory);
        while (!File.Exists(Path.Combine(folder.FullName, "Handhold.slnx")))
        {
            folder = folder.Parent!;
        }

        return Path.Combine(folder.FullName, "docs", "methods", "tables.md");
    }
}
