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
            json.WriteString("column", group.Varying.Column);
            if (!group.Varying.Within.IsEmpty)
                json.WriteString("within", group.Varying.Within[^1]);
            WriteSpreads(json, group);
            json.WriteStartArray("levels");
            foreach (var level in group.Levels)
                Write(json, level);
            json.WriteEndArray();
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

    private static void Write(Utf8JsonWriter json, GroupLevel level)
    {
        json.WriteStartObject();
        json.WriteString("level", level.Label);
        if (level.Parent is { } parent)
            json.WriteString("parent", parent);
        json.WriteNumber("frames", level.Frames);
        foreach (var effect in level.Effects)
            json.WriteNumber(effect.Name, effect.Mode);
        json.WriteStartObject("sd");
        foreach (var effect in level.Effects)
            json.WriteNumber(effect.Name, effect.StandardDeviation);
        json.WriteEndObject();
        json.WriteNumber("borrowed", level.Borrowed);
        json.WriteNumberIfAny("halfKeeperLog2Seconds", level.HalfKeeperExposure?.Log2Seconds);
        json.WriteEndObject();
    }
}
