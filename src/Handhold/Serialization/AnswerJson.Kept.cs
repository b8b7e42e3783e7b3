using System.Text.Json;
using Handhold.Serialization;

namespace Handhold;

public static partial class AnswerJson
{
    /// <summary>Writes what came home against what was promised as an object.</summary>
    /// <param name="writer">Where to.</param>
    /// <param name="report">What came home.</param>
    public static void Write(Utf8JsonWriter writer, KeptReport report)
    {
        ArgumentNullException.ThrowIfNull(writer);
        ArgumentNullException.ThrowIfNull(report);
        writer.WriteStartObject();
        writer.WriteNumber("plans", report.Plans.Length);
        writer.WriteNumber("level", report.Level);
        if (report.Overall is { } overall)
            WriteShare(writer, overall);
        writer.WriteStartArray("byAssurance");
        foreach (var (wanted, share) in report.ByAssurance)
        {
            writer.WriteStartObject();
            writer.WriteNumber("wantedAssurance", wanted);
            WriteShare(writer, share);
            writer.WriteEndObject();
        }

        writer.WriteEndArray();
        writer.WriteNumberIfAny("meanPlace", report.MeanPlace);
        writer.WriteCounts("notShot", [.. report.NotShot.Select(p => p.Number)]);
        writer.WriteStartArray("shoots");
        foreach (var shoot in report.Shoots)
            WriteShoot(writer, shoot);
        writer.WriteEndArray();
        writer.WriteEndObject();
    }

    private static void WriteShare(Utf8JsonWriter json, KeptShare share)
    {
        json.WriteNumber("decided", share.Decided);
        json.WriteNumber("kept", share.Kept);
        json.WriteNumber("days", share.Days);
        json.WriteNumber("share", share.Share);
        json.WriteInterval(share.Interval);
        json.WriteNumber("promised", share.Promised);
        json.WriteNumberIfAny("chanceOfAsFew", share.ChanceOfAsFew);
    }

    private static void WriteShoot(Utf8JsonWriter json, ShotPlan shoot)
    {
        json.WriteStartObject();
        json.WriteNumber("plan", shoot.Plan.Number);
        json.WriteKey(shoot.Plan.Key);
        WriteAt(json, shoot.Plan.At);
        WriteConditions(json, shoot.Plan.Conditions);
        if (shoot.Photographer is { } photographer)
            json.WriteString("photographer", photographer);
        if (shoot.Session is { } session)
            json.WriteString("session", session);
        json.WriteNumber("wantedKeepers", shoot.Plan.Keepers);
        json.WriteNumber("plannedFrames", shoot.Plan.Frames);
        json.WriteNumber("assurance", shoot.Plan.Assurance);
        json.WriteNumber("frames", shoot.Frames);
        json.WriteNumber("keepers", shoot.Keepers);
        json.WriteNumber("unjudged", shoot.Unjudged);
        json.WriteString("outcome", JsonParts.Word(shoot.Outcome));
        json.WriteNumberIfAny("place", shoot.Place);
        json.WriteEndObject();
    }

    /// <summary>Where terms were said to stand; absent when nothing was said.</summary>
    private static void WriteConditions(Utf8JsonWriter json, Conditions conditions)
    {
        if (conditions.Recorded.Any())
            SavedConditions.Write(json, conditions, _ => true);
    }
}
