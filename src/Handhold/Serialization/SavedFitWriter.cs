using System.Collections.Immutable;
using System.Text.Json;

namespace Handhold.Serialization;

/// <summary>Writes a fit: the model, what it was fitted to, and what was found.</summary>
internal static class SavedFitWriter
{
    internal static void Write(Utf8JsonWriter json, FittedCurves curves, bool withCells, Action<Utf8JsonWriter, KeeperCurve> more)
    {
        json.WriteStartObject();
        json.WriteNumber("schemaVersion", SavedFit.SchemaVersion);
        json.WriteString("handhold", HandholdVersion.Text);
        SavedModel.Write(json, curves.Model);
        WriteData(json, curves);
        json.WriteStartArray("curves");
        foreach (var curve in curves)
            WriteCurve(json, curve, withCells, more);
        json.WriteEndArray();
        json.WriteEndObject();
    }

    private static void WriteData(Utf8JsonWriter json, FittedCurves curves)
    {
        json.WriteStartObject("data");
        json.WriteNumber("rows", curves.Sum(c => c.Data.Rows));
        json.WriteNumber("frames", curves.Sum(c => c.Data.Frames));
        json.WriteNumber("keepers", curves.Sum(c => c.Data.Keepers));
        json.WriteNumber("cells", curves.Sum(c => c.Data.Cells.Length));
        json.WriteNumber("unjudged", curves.Sum(c => c.Data.Unjudged));
        json.WriteStartArray("exposures");
        foreach (var seconds in curves.SelectMany(c => c.Data.Speeds).Select(s => s.Exposure.Seconds).Distinct().Order())
            json.WriteNumberValue(seconds);
        json.WriteEndArray();
        json.WriteEndObject();
    }

    private static void WriteCurve(Utf8JsonWriter json, KeeperCurve curve, bool withCells, Action<Utf8JsonWriter, KeeperCurve> more)
    {
        json.WriteStartObject();
        json.WriteKey(curve.Key);
        json.WriteStatuses(curve.Statuses);
        SavedData.Write(json, curve.Data, withCells);
        if (curve.HalfPointPrior is { } halfPoint)
        {
            json.WriteStartObject("priors");
            SavedPriors.Write(json, "tau0", halfPoint);
            json.WriteEndObject();
        }

        json.WriteNumberIfAny("logLikelihood", curve.LogLikelihood);
        json.WriteNumberIfAny("deviance", curve.Deviance);
        if (curve.Linear is { } linear)
            SavedLinear.Write(json, linear);
        else
            WriteParameters(json, curve);
        WriteHalfKeeperExposure(json, curve);
        if (curve.Linear is not null || curve.Sampling is not null)
            SavedLinear.WriteInStops(json, curve.InStops);
        more(json, curve);
        json.WriteEndObject();
    }

    private static void WriteParameters(Utf8JsonWriter json, KeeperCurve curve)
    {
        WriteCoefficients(json, curve.Parameters);
        WriteKnownOrEstimated(json, "ceiling", curve, curve.Model.Ceiling.Value);
        WriteKnownOrEstimated(json, "floor", curve, curve.Model.Floor.Value);
        WriteLuck(json, curve);
        if (curve.Sampling is { } sampling)
            WriteSampling(json, sampling);
        if (!curve.Levels.IsEmpty)
            SavedLevels.Write(json, curve.Levels);
    }

    private static void WriteCoefficients(Utf8JsonWriter json, ImmutableArray<ParameterSummary> parameters)
    {
        json.WriteStartArray("coefficients");
        foreach (var parameter in parameters)
        {
            json.WriteStartObject();
            json.WriteString("name", parameter.Name);
            WriteSummary(json, parameter);
            json.WriteString("prior", parameter.Prior);
            json.WriteEndObject();
        }

        json.WriteEndArray();
    }

    internal static void WriteSampling(Utf8JsonWriter json, Sampling sampling)
    {
        json.WriteStartObject("sampling");
        json.WriteNumber("points", sampling.Points);
        json.WriteNumber("effectiveSize", sampling.EffectiveSize);
        json.WriteNumberIfAny("paretoK", sampling.ParetoK);
        json.WriteEndObject();
    }

    internal static void WriteSummary(Utf8JsonWriter json, ParameterSummary parameter)
    {
        json.WriteNumber("estimate", parameter.Median);
        json.WriteNumber("mean", parameter.Mean);
        json.WriteNumber("sd", parameter.StandardDeviation);
        json.WriteNumberIfAny("nodeChange", parameter.NodeChange);
        json.WriteStartObject("interval");
        json.WriteInterval(parameter.Interval);
        json.WriteString("method", "equalTailed");
        json.WriteEndObject();
    }

    private static void WriteKnownOrEstimated(Utf8JsonWriter json, string name, KeeperCurve curve, double? known)
    {
        json.WriteStartObject(name);
        if (known is { } value)
            json.WriteNumber("estimate", value);
        else
            WriteSummary(json, curve.Parameters.Single(p => p.Name == name));
        json.WriteBoolean("known", known is not null);
        json.WriteEndObject();
    }

    private static void WriteLuck(Utf8JsonWriter json, KeeperCurve curve)
    {
        if (curve.Model.Luck == LuckKind.None)
            return;
        json.WriteStartObject("luckSd");
        json.WriteNumberIfAny("session", Median("sessionLuck"));
        json.WriteNumberIfAny("burst", Median("burstLuck"));
        json.WriteEndObject();

        double? Median(string name) => curve.Parameters.FirstOrDefault(p => p.Name == name)?.Median;
    }

    /// <summary>And how two frames of a burst correlate there. For another day, wherever it lies, and with terms at the reference: a report describes, so it does not decline.</summary>
    private static void WriteHalfKeeperExposure(Utf8JsonWriter json, KeeperCurve curve)
    {
        json.WriteStartObject("halfKeeperExposure");
        var conditions = curve.ReferenceConditions;
        var half = curve.HalfKeeperExposure(AnswerOptions.OfReport(curve));
        json.WriteExposure(half);
        if (curve.Terms is [_, ..] terms)
            SavedConditions.Write(json, conditions, terms.SelectMany(t => t.Columns).Contains);
        json.WriteStatuses(half.Statuses);
        json.WriteEndObject();
        if (curve.Model.Luck == LuckKind.None || half.Exposure is not { } exposure)
            return;
        json.WriteStartObject("burstCorrelation");
        json.WriteNumber("rate", half.Rate);
        json.WriteNumberIfAny("correlation", curve.BurstCorrelation(exposure, AnswerOptions.OfReport(curve)));
        json.WriteEndObject();
    }
}
