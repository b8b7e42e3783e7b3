using System.Text.Json;
using Handhold.Serialization;

namespace Handhold;

public static partial class AnswerJson
{
    /// <summary>Writes the luck of days, and their trend, as an object.</summary>
    /// <param name="writer">Where to.</param>
    /// <param name="answer">What was found.</param>
    public static void Write(Utf8JsonWriter writer, DaysAnswer answer)
    {
        ArgumentNullException.ThrowIfNull(writer);
        ArgumentNullException.ThrowIfNull(answer);
        writer.WriteStartObject();
        writer.WriteKey(answer.Curve.Key);
        writer.WriteStartArray("days");
        foreach (var day in answer.Days)
        {
            writer.WriteStartObject();
            if (day.Photographer is { } photographer)
                writer.WriteString("photographer", photographer);
            if (day.Session is { } session)
                writer.WriteString("session", session);
            writer.WriteNumber("frames", day.Frames);
            writer.WriteNumber("keepers", day.Keepers);
            writer.WriteNumber("stops", day.Stops.Value);
            writer.WriteInterval(day.Interval);
            writer.WriteEndObject();
        }

        writer.WriteEndArray();
        if (answer.Trend is { } trend)
        {
            writer.WriteStartObject("trend");
            writer.WriteString("first", trend.First);
            writer.WriteString("last", trend.Last);
            writer.WriteNumber("stops", trend.Stops.Value);
            writer.WriteInterval(trend.Interval);
            writer.WriteNumber("probabilityBetter", trend.ProbabilityBetter);
            writer.WriteBoolean("told", trend.IsTold);
            writer.WriteEndObject();
        }

        writer.WriteNumber("level", answer.Curve.Model.Level);
        writer.WriteStatuses([.. answer.Curve.Statuses, .. answer.Statuses]);
        writer.WriteEndObject();
    }
}
