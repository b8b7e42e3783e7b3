using System.Collections.Immutable;
using System.Text.Json;

namespace Handhold.Serialization;

/// <summary>The model of a fit as JSON, in the words of the command line's options.</summary>
internal static class SavedModel
{
    internal static void Write(Utf8JsonWriter json, KeeperModel model)
    {
        json.WriteString("estimator", EstimatorWords[model.Estimator]);
        json.WriteString("link", JsonParts.Word(model.Link));
        json.WriteString("scale", model.Estimator == Estimator.Posterior ? "stops" : "link");
        WriteTexts(json, "terms", model.Terms);
        json.WriteStartArray("products");
        foreach (var (first, second) in model.Products)
        {
            json.WriteStartArray();
            json.WriteStringValue(first);
            json.WriteStringValue(second);
            json.WriteEndArray();
        }

        json.WriteEndArray();
        if (!model.Varies.IsEmpty)
            WriteVaries(json, model.Varies);
        json.WriteString("luck", JsonParts.Word(model.Luck));
        if (model.Nodes is { } nodes)
            json.WriteNumber("nodes", nodes);
        json.WriteString("bursts", JsonParts.Word(model.Bursts));
        WriteKnownOrEstimated(json, "ceiling", model.Ceiling.Value);
        WriteKnownOrEstimated(json, "floor", model.Floor.Value);
        json.WriteStartObject("judging");
        json.WriteNumber("sensitivity", model.Judging.Sensitivity);
        json.WriteNumber("specificity", model.Judging.Specificity);
        if (model.Judging.FramesJudgedTwice > 0)
            json.WriteNumber("judgedTwice", model.Judging.FramesJudgedTwice);
        json.WriteEndObject();
        json.WriteBoolean("poolConditions", model.PoolConditions);
        json.WriteNumber("level", model.Level);
        json.WriteNumber("seed", model.Seed);
        WriteTexts(json, "each", model.Each);
        if (model.Estimator == Estimator.Posterior)
            SavedPriors.Write(json, model.Priors);
    }

    internal static KeeperModel Read(JsonPlace place)
    {
        var estimator = EstimatorWords.FirstOrDefault(e => e.Value == place["estimator"].Text());
        if (estimator.Value is null)
            throw place["estimator"].Wrong($"this version knows {Listing.And(EstimatorWords.Values.Order(StringComparer.Ordinal))}");
        var scale = estimator.Key == Estimator.Posterior ? "stops" : "link";
        if (place["scale"].Text() != scale)
            throw place["scale"].Wrong($"the estimator {estimator.Value} speaks in \"{scale}\"");
        return new()
        {
            Estimator = estimator.Key,
            Link = place["link"].OneOf<Link>(),
            Terms = [.. Optional(place, "terms").Select(term => term.Text())],
            Products = [.. Optional(place, "products").Select(ReadProduct)],
            Varies = [.. Optional(place, "varies").Select(ReadVarying)],
            Luck = place["luck"].OneOf<LuckKind>(),
            Nodes = place.Find("nodes")?.Count(),
            Bursts = place["bursts"].OneOf<BurstUse>(),
            Ceiling = ReadKnown(place["ceiling"], value => value is > 0 and <= 1, "should be above 0 and at most 1") is { } ceiling
                ? Ceiling.Fixed(ceiling)
                : Ceiling.Estimated,
            Floor = ReadKnown(place["floor"], value => value is >= 0 and < 1, "should be from 0 to below 1") is { } floor
                ? Floor.Fixed(floor)
                : Floor.Estimated,
            Judging = place.Find("judging") is { } judging
                ? new()
                {
                    Sensitivity = judging["sensitivity"].Number(),
                    Specificity = judging["specificity"].Number(),
                    FramesJudgedTwice = judging.Find("judgedTwice")?.Count() ?? 0,
                }
                : Judging.Perfect,
            PoolConditions = place["poolConditions"].Flag(),
            Level = place["level"].Number() is var level and > 0 and < 1 ? level : throw place["level"].Wrong("should be between 0 and 1"),
            Seed = place["seed"].Count(),
            Each = [.. place["each"].Items().Select(column => column.Text())],
            Priors = estimator.Key == Estimator.Posterior ? SavedPriors.Read(place["priors"]) : Priors.Default,
        };
    }

    private static ImmutableDictionary<Estimator, string> EstimatorWords { get; } =
        new Dictionary<Estimator, string>
        {
            [Estimator.Posterior] = "posterior",
            [Estimator.BiasReduced] = "bias-reduced",
            [Estimator.Likelihood] = "likelihood",
        }.ToImmutableDictionary();

    private static void WriteTexts(Utf8JsonWriter json, string name, ImmutableArray<string> texts)
    {
        json.WriteStartArray(name);
        foreach (var text in texts)
            json.WriteStringValue(text);
        json.WriteEndArray();
    }

    private static void WriteVaries(Utf8JsonWriter json, ImmutableArray<Varying> varies)
    {
        json.WriteStartArray("varies");
        foreach (var varying in varies)
        {
            json.WriteStartObject();
            json.WriteString("column", varying.Column);
            json.WriteString("part", JsonParts.Word(varying.Part));
            if (varying.Term is { } term)
                json.WriteString("term", term);
            WriteTexts(json, "within", varying.Within);
            json.WriteEndObject();
        }

        json.WriteEndArray();
    }

    private static Varying ReadVarying(JsonPlace place) =>
        new(place["column"].Text(), place["part"].OneOf<VaryingPart>())
        {
            Term = place.Find("term")?.Text(),
            Within = [.. place["within"].Items().Select(c => c.Text())],
        };

    /// <summary>Members that the first files of this version did not have.</summary>
    private static IEnumerable<JsonPlace> Optional(JsonPlace place, string name) => place.Find(name) is { } list ? list.Items() : [];

    private static TermProduct ReadProduct(JsonPlace place) =>
        place.Items().ToArray() is [var first, var second] ? new(first.Text(), second.Text()) : throw place.Wrong("should name two terms");

    private static void WriteKnownOrEstimated(Utf8JsonWriter json, string name, double? known)
    {
        if (known is { } value)
            json.WriteNumber(name, value);
        else
            json.WriteString(name, "estimated");
    }

    private static double? ReadKnown(JsonPlace place, Func<double, bool> isRight, string should)
    {
        if (place.Element.ValueKind == JsonValueKind.String)
        {
            Only(place, "estimated");
            return null;
        }

        return place.Number() is var value && isRight(value) ? value : throw place.Wrong(should);
    }

    private static void Only(JsonPlace place, string word)
    {
        if (place.Text() != word)
            throw place.Wrong($"this version knows \"{word}\" only");
    }
}
