using System.Collections.Immutable;
using System.Text.Json;
using Handhold.Serialization;

namespace Handhold;

public static partial class AnswerJson
{
    /// <summary>Writes what the calculator found as an object.</summary>
    /// <param name="writer">Where to.</param>
    /// <param name="answer">What was found.</param>
    /// <param name="rate">The keeper rate that was given, 0 to 1.</param>
    /// <param name="correlation">The correlation within a burst that was given; null: none was, and frames were taken as independent.</param>
    public static void Write(Utf8JsonWriter writer, KnownRateAnswer answer, double rate, double? correlation)
    {
        ArgumentNullException.ThrowIfNull(writer);
        ArgumentNullException.ThrowIfNull(answer);
        writer.WriteStartObject();
        writer.WriteStartObject("key");
        writer.WriteEndObject();
        WritePlan(writer, answer.Frames, answer.Bursts, answer.Assurance, answer.Statuses);
        writer.WriteStartObject("rate");
        writer.WriteNumber("median", rate);
        writer.WriteNumber("mean", rate);
        writer.WriteEndObject();
        WriteLuck(
            writer,
            correlation > 0 ? "beta-binomial" : "none",
            correlation ?? 0,
            "correlation",
            correlation is null ? "assumed" : "given",
            correlation ?? 0
        );
        writer.WriteString("doubt", "none");
        writer.WriteStatuses(answer.Statuses);
        writer.WriteEndObject();
    }

    private static void WriteRate(Utf8JsonWriter json, RateAnswer answer)
    {
        WriteAt(json, answer.At);
        WriteRate(json, answer.Rate);
        WriteLuck(json, answer.Luck);
    }

    private static void WriteSlowest(Utf8JsonWriter json, SlowestAnswer answer)
    {
        json.WriteBoolean("found", answer.Shutter is not null);
        if (answer.Shutter is { } shutter)
            json.WriteSpeed(shutter);
        else
            WriteReason(json, answer.Statuses);
        json.WriteNumberIfAny("assurance", answer.Assurance);
    }

    private static void WriteFrames(Utf8JsonWriter json, FramesNeededAnswer answer)
    {
        WriteAt(json, answer.At);
        WriteConditions(json, answer.Conditions);
        json.WriteNumber("keepers", answer.Keepers);
        json.WriteNumber("wantedAssurance", answer.WantedAssurance);
        WritePlan(json, answer.Frames, answer.Bursts, answer.Assurance, answer.Statuses);
        WriteRate(json, answer.Rate);
        WriteLuck(json, answer.Luck);
        json.WriteStartArray("splits");
        foreach (var split in answer.Splits)
            WriteSplit(json, split);
        json.WriteEndArray();
        if (answer.BudgetSplit is { } nearest)
        {
            json.WritePropertyName("budgetSplit");
            WriteSplit(json, nearest);
        }

        if (!answer.Probabilities.IsEmpty)
            WriteProbabilities(json, answer.Probabilities);
        json.WriteString("doubt", answer.Doubt);
    }

    private static void WriteSplit(Utf8JsonWriter json, ShootSplit split)
    {
        json.WriteStartObject();
        json.WriteNumber("bursts", split.Bursts);
        json.WriteNumber("burstsOf", split.BurstsOf);
        json.WriteNumber("frames", split.Frames);
        json.WriteNumber("assurance", split.Assurance);
        json.WriteEndObject();
    }

    private static void WriteCount(Utf8JsonWriter json, KeeperCountAnswer answer)
    {
        WriteAt(json, answer.At);
        json.WriteNumber("frames", answer.Frames);
        WriteProbabilities(json, answer.Probabilities);
    }

    private static void WriteProbabilities(Utf8JsonWriter json, ImmutableArray<double> probabilities)
    {
        json.WriteStartArray("probabilities");
        foreach (var probability in probabilities)
            json.WriteNumberValue(probability);
        json.WriteEndArray();
    }

    private static void WritePlan(
        Utf8JsonWriter json,
        int? frames,
        ImmutableArray<int> bursts,
        double assurance,
        ImmutableArray<Status> statuses
    )
    {
        json.WriteBoolean("reachable", frames is not null);
        if (frames is { } number)
            json.WriteNumber("frames", number);
        else
            WriteReason(json, statuses);
        json.WriteStartArray("bursts");
        foreach (var burst in bursts)
            json.WriteNumberValue(burst);
        json.WriteEndArray();
        json.WriteNumberIfAny("assurance", assurance);
    }

    /// <summary>Why there is no answer: the status that stands in its way.</summary>
    private static void WriteReason(Utf8JsonWriter json, ImmutableArray<Status> statuses)
    {
        var reason = statuses.FirstOrDefault(s =>
            s.Code is StatusCode.OutsideTestedRange or StatusCode.OverBudget or StatusCode.NotReachable
        );
        if (reason is not null)
            json.WriteString("reason", JsonParts.Word(reason.Code));
    }

    private static void WriteAt(Utf8JsonWriter json, ShutterSpeed at)
    {
        json.WriteNumber("at", at.Seconds);
        json.WriteString("shutter", at.ToShortText());
    }

    private static void WriteRate(Utf8JsonWriter json, RateEstimate? rate)
    {
        if (rate is null)
            return;
        json.WriteStartObject("rate");
        json.WriteNumber("median", rate.Median);
        json.WriteNumber("mean", rate.Mean);
        json.WriteInterval(rate.Interval);
        json.WriteEndObject();
    }

    private static void WriteLuck(Utf8JsonWriter json, LuckUsed luck) =>
        WriteLuck(json, luck.Kind, luck.Value, luck.Unit, luck.Origin, luck.Correlation);

    private static void WriteLuck(Utf8JsonWriter json, string kind, double value, string unit, string origin, double? correlation)
    {
        json.WriteStartObject("luck");
        json.WriteString("kind", kind);
        json.WriteNumber("value", value);
        json.WriteString("origin", origin);
        json.WriteString("unit", unit);
        json.WriteNumberIfAny("correlation", correlation);
        json.WriteEndObject();
    }
}
