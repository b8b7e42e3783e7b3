using System.Text.Json;

namespace Handhold.Serialization;

/// <summary>The model of a fit as JSON, in the words of the command line's options.</summary>
internal static class SavedModel
{
    internal static void Write(Utf8JsonWriter json, KeeperModel model)
    {
        json.WriteString("estimator", "posterior");
        json.WriteString("link", "logit");
        json.WriteString("scale", "stops");
        json.WriteString("luck", JsonParts.Word(model.Luck));
        json.WriteString("bursts", JsonParts.Word(model.Bursts));
        WriteKnownOrEstimated(json, "ceiling", model.Ceiling.Value);
        WriteKnownOrEstimated(json, "floor", model.Floor.Value);
        json.WriteBoolean("poolConditions", model.PoolConditions);
        json.WriteNumber("level", model.Level);
        json.WriteNumber("seed", model.Seed);
        json.WriteStartArray("each");
        foreach (var column in model.Each)
            json.WriteStringValue(column);
        json.WriteEndArray();
        SavedPriors.Write(json, model.Priors);
    }

    internal static KeeperModel Read(JsonPlace place)
    {
        Only(place["estimator"], "posterior");
        Only(place["link"], "logit");
        Only(place["scale"], "stops");
        return new()
        {
            Luck = place["luck"].OneOf<LuckKind>(),
            Bursts = place["bursts"].OneOf<BurstUse>(),
            Ceiling = ReadKnown(place["ceiling"], value => value is > 0 and <= 1, "should be above 0 and at most 1") is { } ceiling
                ? Ceiling.Fixed(ceiling)
                : Ceiling.Estimated,
            Floor = ReadKnown(place["floor"], value => value is >= 0 and < 1, "should be from 0 to below 1") is { } floor
                ? Floor.Fixed(floor)
                : Floor.Estimated,
            PoolConditions = place["poolConditions"].Flag(),
            Level = place["level"].Number() is var level and > 0 and < 1 ? level : throw place["level"].Wrong("should be between 0 and 1"),
            Seed = place["seed"].Count(),
            Each = [.. place["each"].Items().Select(column => column.Text())],
            Priors = SavedPriors.Read(place["priors"]),
        };
    }

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
