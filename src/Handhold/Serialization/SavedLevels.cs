using System.Collections.Immutable;
using System.Text.Json;

namespace Handhold.Serialization;

/// <summary>Levels that a posterior fitted together, as JSON: the median by name, as the other estimators write their estimate, and beside it what else is known.</summary>
internal static class SavedLevels
{
    internal static void Write(Utf8JsonWriter json, ImmutableArray<VaryingLevels> groups)
    {
        json.WriteStartArray("groups");
        foreach (var group in groups)
        {
            json.WriteStartObject();
            json.WriteString("column", group.Varying.Column);
            if (!group.Varying.Within.IsEmpty)
                json.WriteString("within", group.Varying.Within[^1]);
            json.WriteStartObject("sd");
            foreach (var spread in group.Spreads)
                json.WriteNumber(spread.Name, spread.Median);
            json.WriteEndObject();
            WriteSummaries(json, "spreads", group.Spreads);
            if (group.Correlation is { } correlation)
            {
                json.WriteNumber("correlation", correlation.Median);
                WriteSummaries(json, "correlations", [correlation]);
            }

            json.WriteStartArray("levels");
            foreach (var level in group.Levels)
                Write(json, level);
            json.WriteEndArray();
            json.WriteEndObject();
        }

        json.WriteEndArray();
    }

    private static void Write(Utf8JsonWriter json, VaryingLevel level)
    {
        json.WriteStartObject();
        json.WriteString("level", level.Label);
        if (level.Parent is { } parent)
            json.WriteString("parent", parent);
        json.WriteNumber("frames", level.Frames);
        foreach (var effect in level.Effects)
            json.WriteNumber(effect.Name, effect.Median);
        WriteSummaries(json, "effects", level.Effects);
        json.WriteNumber("borrowed", level.Borrowed);
        json.WriteNumberIfAny("halfKeeperLog2Seconds", level.HalfKeeperExposure?.Log2Seconds);
        json.WriteEndObject();
    }

    private static void WriteSummaries(Utf8JsonWriter json, string name, ImmutableArray<ParameterSummary> summaries)
    {
        json.WriteStartArray(name);
        foreach (var summary in summaries)
        {
            json.WriteStartObject();
            json.WriteString("name", summary.Name);
            SavedFitWriter.WriteSummary(json, summary);
            json.WriteString("prior", summary.Prior);
            json.WriteEndObject();
        }

        json.WriteEndArray();
    }
}
