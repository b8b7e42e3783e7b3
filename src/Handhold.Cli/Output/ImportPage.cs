using System.Collections.Immutable;
using System.Text.Json;
using Handhold.Photos;

namespace Handhold.Cli;

/// <summary>What came of photographs: how many frames, what was not taken and what to mind, a line a reason.</summary>
internal static class ImportPage
{
    public static void Write(Page page, ImportReport report)
    {
        var (import, table) = (report.Import, report.Table);
        var conditions = table.Select(cell => cell.Conditions).ToArray();
        string[] counts =
        [
            Different(conditions.Select(c => c.Setup), "setup"),
            Different(conditions.Select(c => c.Session), "session"),
            Different(conditions.Select(c => c.Burst is null ? null : $"{c.Session} {c.Setup} {c.Burst}"), "burst"),
        ];
        page.Text(
            $"Took {Plain.Of(import.Photos.Length, "photograph")}: {Plain.Of(table.Keepers, "keeper")} among {table.Frames} judged, "
                + $"{table.Unjudged - import.Missing} not judged{(import.Missing > 0 ? $", {import.Missing} more missing" : "")}; {string.Join(", ", counts)}."
        );
        foreach (var group in Groups(import.Skipped))
            page.Text($"Skipped {group.Text}.");
        foreach (var group in Groups(import.Remarks))
            page.Text($"{group.Text}.", mark: "Mind: ");
        if (Unfitting(report) is { } unfitting)
            page.Text(unfitting, mark: "Mind: ");
    }

    public static void WriteJson(Utf8JsonWriter json, ImportReport report)
    {
        json.WriteNumber("photographs", report.Import.Photos.Length);
        json.WriteNumber("frames", report.Table.Frames);
        json.WriteNumber("keepers", report.Table.Keepers);
        json.WriteNumber("unjudged", report.Table.Unjudged);
        json.WriteNumber("missing", report.Import.Missing);
        Array(json, "skipped", report.Import.Skipped);
        Array(json, "remarks", report.Import.Remarks);
        if (report.Notes is null)
            return;
        json.WriteStartArray("idleNotes");
        foreach (var line in report.Idle)
            json.WriteNumberValue(line);
        json.WriteEndArray();
    }

    private static string? Unfitting(ImportReport report) =>
        report.Idle.IsEmpty ? null
        : report.Idle is [var line] ? $"line {line} of {report.Notes} fits no photograph."
        : $"lines {string.Join(", ", report.Idle)} of {report.Notes} fit no photograph.";

    /// <summary>One sentence a reason: how many, the first of them, why.</summary>
    public static IEnumerable<(PhotoReason Reason, int Count, string Example, string Text)> Groups(ImmutableArray<PhotoRemark> remarks) =>
        from remark in remarks
        group remark by remark.Reason into same
        orderby same.Key
        let first = same.First()
        let noun = same.Key == PhotoReason.NoRejects ? "folder" : "file"
        let example = same.Count() == 1 ? first.Path : $"such as {first.Path}"
        select (same.Key, same.Count(), first.Path, $"{Plain.Of(same.Count(), noun)}, {example}: {first.Message}");

    private static void Array(Utf8JsonWriter json, string name, ImmutableArray<PhotoRemark> remarks)
    {
        json.WriteStartArray(name);
        foreach (var (reason, count, example, text) in Groups(remarks))
        {
            json.WriteStartObject();
            json.WriteString("code", JsonNamingPolicy.CamelCase.ConvertName(reason.ToString()));
            json.WriteNumber("count", count);
            json.WriteString("example", example);
            json.WriteString("message", text);
            json.WriteEndObject();
        }

        json.WriteEndArray();
    }

    private static string Different<T>(IEnumerable<T?> labels, string noun) =>
        Plain.Of(labels.Where(label => label is not null).Distinct().Count(), noun);
}
