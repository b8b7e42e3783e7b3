using System.Collections.Immutable;
using System.Text.Json;

namespace Handhold.Serialization;

/// <summary>The parts that fits and answers write alike.</summary>
internal static class JsonParts
{
    internal static void WriteKey(this Utf8JsonWriter json, CurveKey key, string? without = null)
    {
        json.WriteStartObject("key");
        foreach (var (column, value) in key.Values.Where(v => v.Key != without))
            json.WriteString(column, value);
        json.WriteEndObject();
    }

    internal static void WriteStatuses(this Utf8JsonWriter json, ImmutableArray<Status> statuses)
    {
        json.WriteStartArray("status");
        foreach (var status in statuses)
        {
            json.WriteStartObject();
            json.WriteString("code", Word(status.Code));
            json.WriteString("message", status.Message);
            json.WriteEndObject();
        }

        json.WriteEndArray();
    }

    /// <summary>One speed three times over: <c>log2Seconds</c>, <c>seconds</c>, and <c>shutter</c>, the nearest mark of cameras.</summary>
    internal static void WriteSpeed(this Utf8JsonWriter json, ShutterSpeed speed)
    {
        json.WriteNumber("log2Seconds", speed.Log2Seconds);
        json.WriteNumber("seconds", speed.Seconds);
        json.WriteString("shutter", MarkedSpeeds.Told(speed, Marks.Third).ToShortText());
    }

    /// <summary>An exposure with its interval set, as members of the object at hand.</summary>
    internal static void WriteExposure(this Utf8JsonWriter json, ExposureAnswer answer)
    {
        json.WriteString("kind", Word(answer.Set.Kind));
        if (answer.Exposure is { } exposure)
            json.WriteSpeed(exposure);
        json.WriteStartArray("pieces");
        foreach (var piece in answer.Set.Pieces)
        {
            json.WriteStartObject();
            json.WriteNumberIfAny("lower", piece.Lower);
            json.WriteNumberIfAny("upper", piece.Upper);
            json.WriteEndObject();
        }

        json.WriteEndArray();
        json.WriteString("method", answer.Set.Method);
        json.WriteBoolean("withinTested", answer.WithinTested);
    }

    internal static void WriteInterval(this Utf8JsonWriter json, Interval interval)
    {
        json.WriteNumber("lower", interval.Lower);
        json.WriteNumber("upper", interval.Upper);
        if (interval is ConfidenceInterval { Method: var method })
            json.WriteString("method", method);
    }

    /// <summary>A number that does not exist is absent.</summary>
    internal static void WriteNumberIfAny(this Utf8JsonWriter json, string name, double? value)
    {
        if (value is { } number && double.IsFinite(number))
            json.WriteNumber(name, number);
    }

    internal static void WriteCounts(this Utf8JsonWriter json, string name, ImmutableArray<int> counts)
    {
        json.WriteStartArray(name);
        foreach (var count in counts)
            json.WriteNumberValue(count);
        json.WriteEndArray();
    }

    /// <summary>A name of the library as JSON spells it: with a small first letter; one kind of luck as the command line does.</summary>
    internal static string Word<T>(T value)
        where T : struct, Enum =>
        value is LuckKind.BetaBinomial ? "beta-binomial" : JsonNamingPolicy.CamelCase.ConvertName(value.ToString());
}
