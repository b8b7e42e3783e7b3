using System.Text.Json;

namespace Handhold.Serialization;

/// <summary>Priors as JSON: the family by name, its numbers by name.</summary>
internal static class SavedPriors
{
    internal static void Write(Utf8JsonWriter json, Priors priors)
    {
        json.WriteStartObject("priors");
        json.WriteString("version", priors.Version);
        if (priors.HalfPoint is { } halfPoint)
            Write(json, "tau0", halfPoint);
        Write(json, "b", priors.Steepness);
        Write(json, "ceilingLoss", priors.CeilingLoss);
        Write(json, "floor", priors.Floor);
        Write(json, "sessionLuck", priors.SessionLuck);
        Write(json, "burstLuck", priors.BurstLuck);
        WriteAnchor(json, priors.Anchor);
        Write(json, "firstFrame", priors.FirstFrame);
        Write(json, "columnOverRange", priors.ColumnOverRange);
        Write(json, "columnLevel", priors.ColumnLevel);
        Write(json, "steepnessOverRange", priors.SteepnessOverRange);
        WriteSpreads(json, priors.Spreads);
        json.WriteEndObject();
    }

    internal static Priors Read(JsonPlace place) =>
        new()
        {
            Version = place["version"].Text(),
            HalfPoint = place.Find("tau0") is { } halfPoint ? Normal(halfPoint) : null,
            Steepness = LogNormal(place["b"]),
            CeilingLoss = Beta(place["ceilingLoss"]),
            Floor = Beta(place["floor"]),
            SessionLuck = HalfNormal(place["sessionLuck"]),
            BurstLuck = HalfNormal(place["burstLuck"]),
            Anchor = ReadAnchor(place["anchor"]),
            FirstFrame = Later(place, "firstFrame", Priors.Default.FirstFrame),
            ColumnOverRange = Later(place, "columnOverRange", Priors.Default.ColumnOverRange),
            ColumnLevel = Later(place, "columnLevel", Priors.Default.ColumnLevel),
            SteepnessOverRange = Later(place, "steepnessOverRange", Priors.Default.SteepnessOverRange),
            Spreads = place.Find("spreads") is { } spreads ? ReadSpreads(spreads) : Priors.Default.Spreads,
        };

    internal static void Write(Utf8JsonWriter json, string name, NormalPrior prior) =>
        Write(json, name, "normal", ("mean", prior.Mean), ("sd", prior.StandardDeviation));

    /// <summary>A prior that the first files of this version did not have: what it was then.</summary>
    private static NormalPrior Later(JsonPlace place, string name, NormalPrior then) =>
        place.Find(name) is { } prior ? Normal(prior) : then;

    private static NormalPrior Normal(JsonPlace place) => new(Number(place, "normal", "mean"), Positive(place, "normal", "sd"));

    private static void Write(Utf8JsonWriter json, string name, LogNormalPrior prior) =>
        Write(json, name, "lognormal", ("median", prior.Median), ("logSd", prior.LogStandardDeviation));

    private static LogNormalPrior LogNormal(JsonPlace place) =>
        new(Positive(place, "lognormal", "median"), Positive(place, "lognormal", "logSd"));

    private static void Write(Utf8JsonWriter json, string name, BetaPrior prior) =>
        Write(json, name, "beta", ("a", prior.A), ("b", prior.B));

    private static BetaPrior Beta(JsonPlace place) => new(Positive(place, "beta", "a"), Positive(place, "beta", "b"));

    private static void Write(Utf8JsonWriter json, string name, HalfNormalPrior prior) =>
        Write(json, name, "half-normal", ("scale", prior.Scale));

    private static HalfNormalPrior HalfNormal(JsonPlace place) => new(Positive(place, "half-normal", "scale"));

    private static void WriteAnchor(Utf8JsonWriter json, AnchorPriors anchor)
    {
        json.WriteStartObject("anchor");
        Write(json, "print", anchor.Print);
        Write(json, "pixel", anchor.Pixel);
        Write(json, "otherCriterion", anchor.OtherCriterion);
        Write(json, "noFocalLength", anchor.NoFocalLength);
        Write(json, "focalLength", anchor.FocalLength);
        Write(json, "magnification", anchor.Magnification);
        Write(json, "ratedStop", anchor.RatedStop);
        Write(json, "unratedStabiliser", anchor.UnratedStabiliser);
        Write(json, "handSpeed", anchor.HandSpeed);
        Write(json, "slightMotion", anchor.SlightMotion);
        Write(json, "briskMotion", anchor.BriskMotion);
        json.WriteEndObject();
    }

    private static AnchorPriors ReadAnchor(JsonPlace place) =>
        new()
        {
            Print = Normal(place["print"]),
            Pixel = Normal(place["pixel"]),
            OtherCriterion = Normal(place["otherCriterion"]),
            NoFocalLength = Normal(place["noFocalLength"]),
            FocalLength = Normal(place["focalLength"]),
            Magnification = Normal(place["magnification"]),
            RatedStop = Normal(place["ratedStop"]),
            UnratedStabiliser = Normal(place["unratedStabiliser"]),
            HandSpeed = LogNormal(place["handSpeed"]),
            SlightMotion = Normal(place["slightMotion"]),
            BriskMotion = Normal(place["briskMotion"]),
        };

    private static void WriteSpreads(Utf8JsonWriter json, SpreadPriors spreads)
    {
        json.WriteStartObject("spreads");
        Write(json, "photographerTau", spreads.PhotographerTau);
        Write(json, "photographerLogB", spreads.PhotographerLogB);
        Write(json, "setupTau", spreads.SetupTau);
        Write(json, "setupLogB", spreads.SetupLogB);
        Write(json, "otherTau", spreads.OtherTau);
        Write(json, "otherLogB", spreads.OtherLogB);
        Write(json, "term", spreads.Term);
        Write(json, "correlation", "lkj", ("shape", spreads.Correlation.Shape));
        json.WriteEndObject();
    }

    private static SpreadPriors ReadSpreads(JsonPlace place) =>
        new()
        {
            PhotographerTau = HalfNormal(place["photographerTau"]),
            PhotographerLogB = HalfNormal(place["photographerLogB"]),
            SetupTau = HalfNormal(place["setupTau"]),
            SetupLogB = HalfNormal(place["setupLogB"]),
            OtherTau = HalfNormal(place["otherTau"]),
            OtherLogB = HalfNormal(place["otherLogB"]),
            Term = place.Find("term") is { } term ? HalfNormal(term) : Priors.Default.Spreads.Term,
            Correlation = new(Positive(place["correlation"], "lkj", "shape")),
        };

    private static void Write(Utf8JsonWriter json, string name, string family, params ReadOnlySpan<(string Name, double Value)> numbers)
    {
        json.WriteStartObject(name);
        json.WriteString("family", family);
        foreach (var (part, value) in numbers)
            json.WriteNumber(part, value);
        json.WriteEndObject();
    }

    private static double Number(JsonPlace place, string family, string name) =>
        place["family"].Text() == family ? place[name].Number() : throw place["family"].Wrong($"should be \"{family}\"");

    private static double Positive(JsonPlace place, string family, string name) =>
        Number(place, family, name) is var number and > 0 ? number : throw place[name].Wrong("should be above 0");
}
