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
            SavedGroups.WriteColumn(json, group.Varying);
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

            SavedGroups.WriteLevels(json, group.Levels, level => WriteEffects(json, level));
            json.WriteEndObject();
        }

        json.WriteEndArray();
    }

    private static void WriteEffects(Utf8JsonWriter json, VaryingLevel level)
    {
        foreach (var effect in level.Effects)
            json.WriteNumber(effect.Name, effect.Median);
        WriteSummaries(json, "effects", level.Effects);
        SavedFitWriter.WriteSampling(json, level.Sampling);
        json.WriteStatuses(level.Statuses);
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
