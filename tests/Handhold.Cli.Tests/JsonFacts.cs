using System.Text.Json;

namespace Handhold.Cli.Tests;

/// <summary>What is true of JSON whatever the numbers are.</summary>
internal static class JsonFacts
{
    public static string[] Names(this JsonElement value) => [.. value.EnumerateObject().Select(member => member.Name)];

    public static bool Has(this JsonElement value, string name) => value.TryGetProperty(name, out _);

    public static double Number(this JsonElement value, string name) => value.GetProperty(name).GetDouble();

    public static string? Text(this JsonElement value, string name) => value.GetProperty(name).GetString();

    public static JsonElement[] List(this JsonElement value, string name) => [.. value.GetProperty(name).EnumerateArray()];

    /// <summary>The one answer of a question.</summary>
    public static JsonElement Answer(this JsonElement report) => Assert.Single(report.List("answers"));

    /// <summary>Every null, and every number that is written as text.</summary>
    public static IEnumerable<string> Gaps(this JsonElement value, string path = "$") =>
        value.ValueKind switch
        {
            JsonValueKind.Null => [path],
            JsonValueKind.String when value.GetString() is "NaN" or "Infinity" or "-Infinity" => [path],
            JsonValueKind.Object => value.EnumerateObject().SelectMany(m => m.Value.Gaps($"{path}.{m.Name}")),
            JsonValueKind.Array => value.EnumerateArray().SelectMany((item, i) => item.Gaps($"{path}[{i}]")),
            _ => [],
        };
}
