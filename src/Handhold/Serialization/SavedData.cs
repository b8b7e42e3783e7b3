using System.Collections.Immutable;
using System.Text.Json;

namespace Handhold.Serialization;

/// <summary>The counts of a curve as JSON.</summary>
internal static class SavedData
{
    /// <summary>Writes the sums, and the conditions and cells behind them.</summary>
    internal static void Write(Utf8JsonWriter json, CurveData data, bool withCells)
    {
        json.WriteStartObject("data");
        json.WriteNumber("rows", data.Rows);
        json.WriteNumber("frames", data.Frames);
        json.WriteNumber("keepers", data.Keepers);
        json.WriteNumber("cells", data.Cells.Length);
        json.WriteNumber("unjudged", data.Unjudged);
        json.WriteNumber("sessions", data.Sessions);
        json.WriteNumber("bursts", data.Bursts);
        if (data.IsOrderConfounded)
            json.WriteBoolean("shotInOrder", true);
        if (data.Survivors is not (0, 0) and var (judged, deleted))
        {
            json.WriteNumber("survivors", judged);
            json.WriteNumber("deleted", deleted);
        }

        json.WriteEndObject();
        var shared = SavedConditions.Shared(data.Cells);
        SavedConditions.Write(json, data.Cells[0].Conditions, shared.Contains);
        if (!withCells)
            return;
        json.WriteStartArray("cells");
        foreach (var cell in data.Cells)
        {
            json.WriteStartObject();
            json.WriteNumber("exposure_s", cell.Exposure.Seconds);
            json.WriteNumber("frames", cell.Frames);
            json.WriteNumber("keepers", cell.Keepers);
            SavedConditions.Write(json, cell.Conditions, column => !shared.Contains(column));
            json.WriteEndObject();
        }

        json.WriteEndArray();
        if (!data.NotJudged.IsEmpty)
            WriteNotJudged(json, data.NotJudged);
    }

    private static void WriteNotJudged(Utf8JsonWriter json, ImmutableArray<FrameCell> cells)
    {
        json.WriteStartArray("notJudged");
        foreach (var cell in cells)
        {
            json.WriteStartObject();
            json.WriteNumber("exposure_s", cell.Exposure.Seconds);
            json.WriteNumber("frames", cell.Unjudged);
            SavedConditions.Write(json, cell.Conditions, _ => true);
            json.WriteEndObject();
        }

        json.WriteEndArray();
    }

    /// <summary>Reads the cells, and checks them against their sums.</summary>
    internal static FrameCell[] Read(JsonPlace curve)
    {
        var (sums, shared) = (curve["data"], SavedConditions.Read(curve["conditions"], Conditions.None));
        FrameCell[] cells = [.. curve["cells"].Items().Select(cell => ReadCell(cell, shared))];
        CheckSum(sums["cells"], cells.Length);
        CheckSum(sums["frames"], cells.Sum(c => (long)c.Frames));
        CheckSum(sums["keepers"], cells.Sum(c => (long)c.Keepers));
        if (cells.Length == 0)
            throw curve["cells"].Wrong("should have something in it");
        if (sums["rows"].Count() < cells.Length)
            throw sums["rows"].Wrong(FormattableString.Invariant($"there are {cells.Length} cells"));
        cells = [.. WithNotJudged(cells, curve)];
        var elsewhere = sums["unjudged"].Count() - cells.Sum(c => (long)c.Unjudged);
        if (elsewhere < 0)
            throw sums["unjudged"].Wrong("more frames than that are listed as not judged");
        cells[0] = cells[0] with
        {
            InOrder = sums.Find("shotInOrder")?.Flag() ?? false,
            Survivors = (sums.Find("survivors")?.Count() ?? 0, sums.Find("deleted")?.Count() ?? 0),
            Elsewhere = (int)elsewhere,
            Rows = Math.Max(1, sums["rows"].Count() - cells.Length + 1),
        };
        return cells;
    }

    /// <summary>The cells with the frames not judged that go with each, then those of other conditions; the first files did not list them.</summary>
    private static IEnumerable<FrameCell> WithNotJudged(FrameCell[] cells, JsonPlace curve)
    {
        if (curve.Find("notJudged") is not { } list)
            return cells;
        var listed = list.Items()
            .GroupBy(place => (ReadExposure(place), SavedConditions.Read(place["conditions"], Conditions.None)))
            .ToDictionary(
                g => g.Key,
                g => g.Sum(place => place["frames"].Count() is var n and > 0 ? n : throw place["frames"].Wrong("should be above 0"))
            );
        FrameCell[] judged =
        [
            .. cells.Select(c => listed.Remove((c.Exposure, c.Conditions), out var frames) ? c with { Unjudged = frames } : c),
        ];
        return judged.Concat(listed.Select(l => new FrameCell(l.Key.Item1, 0, 0) { Unjudged = l.Value, Conditions = l.Key.Item2 }));
    }

    private static FrameCell ReadCell(JsonPlace place, Conditions shared)
    {
        var exposure = ReadExposure(place);
        try
        {
            return new(exposure, place["frames"].Count(), place["keepers"].Count())
            {
                Conditions = SavedConditions.Read(place["conditions"], shared),
            };
        }
        catch (CellException impossible)
        {
            throw place.Impossible(impossible);
        }
    }

    private static ShutterSpeed ReadExposure(JsonPlace place) =>
        place["exposure_s"].Number() is var seconds and > 0
            ? ShutterSpeed.FromSeconds(seconds)
            : throw place["exposure_s"].Wrong("should be above 0");

    private static void CheckSum(JsonPlace place, long found)
    {
        if (place.Count() != found)
            throw place.Wrong(FormattableString.Invariant($"its cells add up to {found}"));
    }
}
