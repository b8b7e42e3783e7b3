using System.Text.Json;

namespace Handhold.Diagnostics;

/// <summary>Checks as JSON.</summary>
public static class ChecksJson
{
    /// <summary>Writes checks as an object; what does not exist is absent.</summary>
    /// <param name="writer">Where to.</param>
    /// <param name="checks">The checks.</param>
    public static void Write(Utf8JsonWriter writer, CurveChecks checks)
    {
        ArgumentNullException.ThrowIfNull(writer);
        ArgumentNullException.ThrowIfNull(checks);
        writer.WriteStartObject();
        writer.WriteNumber("rate", checks.Rate);
        writer.WriteStartArray("speeds");
        foreach (var speed in checks.Speeds)
            Speed(writer, speed);
        writer.WriteEndArray();
        writer.WriteStartArray("cells");
        foreach (var cell in checks.Cells)
            Cell(writer, cell, checks.Labels(cell));
        writer.WriteEndArray();
        Number(writer, "logPredictiveDensity", checks.LogPredictiveDensity);
        Number(writer, "logPredictiveError", checks.LogPredictiveError);
        writer.WriteEndObject();
    }

    private static void Speed(Utf8JsonWriter json, SpeedCheck speed)
    {
        json.WriteStartObject();
        json.WriteNumber("at", speed.Seen.Exposure.Seconds);
        json.WriteNumber("frames", speed.Seen.Frames);
        json.WriteNumber("keepers", speed.Seen.Keepers);
        json.WriteStartObject("observed");
        json.WriteNumber("rate", (double)speed.Seen.Keepers / speed.Seen.Frames);
        json.WriteNumber("lower", speed.Observed.Lower);
        json.WriteNumber("upper", speed.Observed.Upper);
        json.WriteEndObject();
        Number(json, "fitted", speed.Fitted);
        Number(json, "expected", speed.Expected);
        Number(json, "gapPoints", speed.GapInPoints);
        Number(json, "chance", speed.Chance);
        json.WriteEndObject();
    }

    private static void Cell(Utf8JsonWriter json, CellCheck cell, IEnumerable<(string Column, string Label)> labels)
    {
        json.WriteStartObject();
        json.WriteStartArray("at");
        foreach (var seconds in cell.Cells.Select(c => c.Exposure.Seconds).Distinct())
            json.WriteNumberValue(seconds);
        json.WriteEndArray();
        foreach (var (column, label) in labels)
            json.WriteString(column, label);
        if (cell.Cells[0].Conditions.Burst is { } burst)
            json.WriteString("burst", burst);
        json.WriteNumber("frames", cell.Frames);
        json.WriteNumber("keepers", cell.Keepers);
        Number(json, "residual", cell.Residual);
        Number(json, "leverage", cell.Leverage);
        Number(json, "influenceStops", cell.Influence?.Value);
        Number(json, "logPredictiveDensity", cell.LogPredictiveDensity);
        json.WriteBoolean("reliable", cell.IsReliable);
        json.WriteEndObject();
    }

    private static void Number(Utf8JsonWriter json, string name, double? value)
    {
        if (value is { } number && double.IsFinite(number))
            json.WriteNumber(name, number);
    }
}
