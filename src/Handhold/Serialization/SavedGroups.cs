using System.Collections.Immutable;
using System.Text.Json;

namespace Handhold.Serialization;

/// <summary>Levels that vary, as JSON.</summary>
internal static class SavedGroups
{
    internal static void Write(Utf8JsonWriter json, ImmutableArray<GroupSpread> groups)
    {
        json.WriteStartArray("groups");
        foreach (var group in groups)
        {
            json.WriteStartObject();
            WriteColumn(json, group.Varying);
            WriteSpreads(json, group);
            WriteLevels(json, group.Levels, level => WriteEffects(json, level));
            json.WriteEndObject();
        }

        json.WriteEndArray();
    }

    private static void WriteSpreads(Utf8JsonWriter json, GroupSpread group)
    {
        json.WriteStartObject("sd");
        foreach (var spread in group.Spreads)
            json.WriteNumberIfAny(spread.Name, spread.Estimate);
        json.WriteEndObject();
        json.WriteStartObject("sdStandardError");
        foreach (var spread in group.Spreads)
            json.WriteNumberIfAny(spread.Name, spread.StandardError);
        json.WriteEndObject();
        json.WriteStartObject("sdInterval");
        foreach (var spread in group.Spreads)
        {
            json.WriteStartObject(spread.Name);
            json.WriteNumberIfAny("lower", spread.Interval.Lower);
            json.WriteNumberIfAny("upper", spread.Interval.Upper);
            json.WriteString("method", spread.Interval.Method);
            json.WriteEndObject();
        }

        json.WriteEndObject();
        json.WriteNumberIfAny("correlation", group.Correlation);
        json.WriteNumberIfAny("sdStops", group.InStops);
    }

    /// <summary>The column, the term that varies, and the column its labels belong to.</summary>
    internal static void WriteColumn(Utf8JsonWriter json, Varying varying)
    {
        json.WriteString("column", varying.Column);
        if (varying.Term is { } term)
            json.WriteString("term", term);
        if (!varying.Within.IsEmpty)
            json.WriteString("within", varying.Within[^1]);
    }

    /// <summary>The levels; their effects as their estimator knows them.</summary>
    internal static void WriteLevels<TLevel>(Utf8JsonWriter json, ImmutableArray<TLevel> levels, Action<TLevel> writeEffects)
        where TLevel : FittedLevel
    {
        json.WriteStartArray("levels");
        foreach (var level in levels)
        {
            json.WriteStartObject();
            json.WriteString("level", level.Label);
            if (level.Parent is { } parent)
                json.WriteString("parent", parent);
            json.WriteNumber("frames", level.Frames);
            writeEffects(level);
            if (!level.InStops.IsEmpty)
                SavedLinear.WriteInStops(json, level.InStops);
            json.WriteNumber("borrowed", level.Borrowed);
            json.WriteNumberIfAny("halfKeeperLog2Seconds", level.HalfKeeperExposure?.Log2Seconds);
            json.WriteEndObject();
        }

        json.WriteEndArray();
    }

    private static void WriteEffects(Utf8JsonWriter json, GroupLevel level)
    {
        foreach (var effect in level.Effects)
            json.WriteNumber(effect.Name, effect.Mode);
        json.WriteStartObject("sd");
        foreach (var effect in level.Effects)
            json.WriteNumber(effect.Name, effect.StandardDeviation);
        json.WriteEndObject();
    }
}
