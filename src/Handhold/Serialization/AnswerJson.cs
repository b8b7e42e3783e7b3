using System.Text.Json;
using Handhold.Serialization;

namespace Handhold;

/// <summary>Answers as JSON. A number that does not exist is absent, and <c>status</c> says why.</summary>
public static partial class AnswerJson
{
    /// <summary>Writes one answer as an object.</summary>
    public static void Write(Utf8JsonWriter writer, Answer answer)
    {
        ArgumentNullException.ThrowIfNull(writer);
        ArgumentNullException.ThrowIfNull(answer);
        writer.WriteStartObject();
        writer.WriteKey(answer.Curve.Key);
        if (answer.Whose is { } whose)
            writer.WriteString("whose", Words(whose));
        WriteKind(writer, answer);
        if (answer is not ExposureAnswer)
            writer.WriteBoolean("withinTested", answer.WithinTested);
        writer.WriteString("estimator", answer.Curve.Estimator);
        writer.WriteNumber("level", answer.Curve.Model.Level);
        if (answer.Curve.Data.Criterion is { } criterion)
            writer.WriteString("criterion", criterion.Name);
        if (answer.AsRejects is { } rejects)
            WriteAsRejects(writer, rejects);
        writer.WriteStatuses(answer.Statuses);
        writer.WriteEndObject();
    }

    // As the command line spells it.
    private static string Words(Whose whose) =>
        whose switch
        {
            Whose.Typical => "typical",
            Whose.NewSetup => "new-setup",
            Whose.NewPhotographer => "new-photographer",
            Whose.Population => "population",
            _ => "this",
        };

    private static void WriteKind(Utf8JsonWriter writer, Answer answer)
    {
        switch (answer)
        {
            case RateAnswer rate:
                WriteRate(writer, rate);
                break;
            case ExposureAnswer exposure:
                writer.WriteNumber("rate", exposure.Rate);
                writer.WriteExposure(exposure);
                break;
            case SlowestAnswer slowest:
                WriteSlowest(writer, slowest);
                break;
            case FramesNeededAnswer frames:
                WriteFrames(writer, frames);
                break;
            case KeeperCountAnswer count:
                WriteCount(writer, count);
                break;
        }
    }

    /// <summary>The same answer when frames not judged are called rejects.</summary>
    private static void WriteAsRejects(Utf8JsonWriter writer, Answer rejects)
    {
        writer.WriteStartObject("asRejects");
        if (rejects is FramesNeededAnswer frames)
        {
            WritePlan(writer, frames.Frames, frames.Bursts, frames.Assurance, frames.Statuses);
            WriteRate(writer, frames.Rate);
        }
        else
            WriteKind(writer, rejects);
        writer.WriteEndObject();
    }

    /// <summary>Writes a difference in stops as an object.</summary>
    /// <param name="writer">Where to.</param>
    /// <param name="difference">The difference.</param>
    /// <param name="between">The column that tells the sides apart.</param>
    public static void Write(Utf8JsonWriter writer, StopsDifference difference, string between)
    {
        ArgumentNullException.ThrowIfNull(writer);
        ArgumentNullException.ThrowIfNull(difference);
        writer.WriteStartObject();
        writer.WriteKey(difference.A.Key, without: between);
        writer.WriteString("between", between);
        writer.WriteString("a", difference.A.Key[between] ?? difference.ConditionsOfA[between]);
        writer.WriteString("b", difference.B.Key[between] ?? difference.ConditionsOfB[between]);
        writer.WriteNumber("rate", difference.Rate);
        writer.WriteNumberIfAny("stops", difference.Stops?.Value);
        if (difference.Interval is { } interval)
            writer.WriteInterval(interval);
        writer.WriteNumberIfAny("probabilityBetter", difference.ProbabilityBetter);
        writer.WriteStatuses(difference.Statuses);
        writer.WriteEndObject();
    }
}
