using System.Collections.Immutable;
using System.Text.Json;

namespace Handhold.Serialization;

/// <summary>What the likelihood and bias-reduced estimators found, as JSON. A number that does not exist is absent.</summary>
internal static class SavedLinear
{
    internal static void Write(Utf8JsonWriter json, LinearFit linear)
    {
        json.WriteNumberIfAny("penalisedLogLikelihood", linear.PenalisedLogLikelihood);
        json.WriteNumberIfAny("aic", linear.Akaike);
        json.WriteNumber("degreesOfFreedom", linear.DegreesOfFreedom);
        json.WriteStartArray("coefficients");
        foreach (var coefficient in linear.Coefficients)
            Write(json, coefficient);
        json.WriteEndArray();
        if (!linear.Covariance.IsEmpty)
            WriteCovariance(json, linear.Covariance);
        WriteAsymptote(json, "ceiling", linear.Ceiling, linear.CeilingStandardError);
        WriteAsymptote(json, "floor", linear.Floor, linear.FloorStandardError);
        if (linear.Luck is { } luck)
            WriteLuck(json, luck);
        if (linear.Nodes is { } nodes)
        {
            json.WriteNumber("nodes", nodes);
            SavedGroups.Write(json, linear.Groups);
        }
    }

    /// <summary>A correlation as <c>rho</c>, like a coefficient; an sd as <c>burst</c> of <c>luckSd</c>, on the scale of the fit, what is known of it beside.</summary>
    private static void WriteLuck(Utf8JsonWriter json, Coefficient luck)
    {
        var isCorrelation = luck.Name == "rho";
        json.WriteStartObject(isCorrelation ? luck.Name : "luckSd");
        json.WriteNumberIfAny(isCorrelation ? "estimate" : "burst", luck.Estimate);
        json.WriteNumberIfAny("standardError", luck.StandardError);
        WriteInterval(json, luck.Interval);
        json.WriteEndObject();
    }

    internal static void WriteInStops(Utf8JsonWriter json, ImmutableArray<TermInStops> effects)
    {
        json.WriteStartArray("inStops");
        foreach (var effect in effects)
        {
            json.WriteStartObject();
            json.WriteString("term", effect.Term);
            if (!effect.At.IsEmpty)
            {
                json.WriteStartObject("at");
                foreach (var (column, value) in effect.At)
                    json.WriteNumber(column, value);
                json.WriteEndObject();
            }

            json.WriteNumberIfAny("stops", effect.Stops?.Value);
            json.WriteNumberIfAny("lower", effect.Lower);
            json.WriteNumberIfAny("upper", effect.Upper);
            json.WriteEndObject();
        }

        json.WriteEndArray();
    }

    private static void Write(Utf8JsonWriter json, Coefficient coefficient)
    {
        json.WriteStartObject();
        json.WriteString("name", coefficient.Name);
        json.WriteNumberIfAny("estimate", coefficient.Estimate);
        json.WriteNumberIfAny("standardError", coefficient.StandardError);
        WriteInterval(json, coefficient.Interval);
        json.WriteEndObject();
    }

    private static void WriteInterval(Utf8JsonWriter json, CoefficientInterval interval)
    {
        json.WriteStartObject("interval");
        json.WriteNumberIfAny("lower", interval.Lower);
        json.WriteNumberIfAny("upper", interval.Upper);
        json.WriteString("method", interval.Method);
        json.WriteEndObject();
    }

    private static void WriteCovariance(Utf8JsonWriter json, ImmutableArray<ImmutableArray<double>> covariance)
    {
        json.WriteStartArray("covariance");
        foreach (var row in covariance)
        {
            json.WriteStartArray();
            foreach (var value in row)
                json.WriteNumberValue(value);
            json.WriteEndArray();
        }

        json.WriteEndArray();
    }

    private static void WriteAsymptote(Utf8JsonWriter json, string name, double value, double? standardError)
    {
        json.WriteStartObject(name);
        json.WriteNumber("estimate", value);
        json.WriteNumberIfAny("standardError", standardError);
        json.WriteEndObject();
    }
}
