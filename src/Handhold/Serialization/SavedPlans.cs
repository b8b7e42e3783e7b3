using System.Collections.Immutable;
using Handhold.Serialization;

namespace Handhold;

/// <summary>Plans as the answers that handed them out, in JSON: what <c>handhold frames … --json</c> prints.</summary>
public static class SavedPlans
{
    /// <summary>Reads the plans among answers; those that found no number of frames are none.</summary>
    /// <param name="json">The text, at most <see cref="SavedFit.LargestText"/> characters.</param>
    /// <param name="first">Number of the first answer; the others count on from it.</param>
    /// <exception cref="SavedPlansException">The text holds no answers on frames, or contradicts itself.</exception>
    public static ImmutableArray<PlannedShoot> Read(string json, int first = 1)
    {
        ArgumentNullException.ThrowIfNull(json);
        using var document = SavedKind.Plans.Parse(json);
        JsonPlace root = new(document.RootElement, "", SavedKind.Plans);
        SavedKind.Plans.CheckVersion(root);
        return
        [
            .. root["answers"]
                .Items()
                .Select((answer, i) => (answer, i))
                .Where(a => a.answer["reachable"].Flag())
                .Select(a => Plan(a.answer, first + a.i)),
        ];
    }

    private static PlannedShoot Plan(JsonPlace answer, int number)
    {
        var seconds = answer["at"].Number() is var at and > 0 ? at : throw answer["at"].Wrong("should be above 0");
        var keepers = answer["keepers"].Count() is var k and > 0 ? k : throw answer["keepers"].Wrong("should be at least 1");
        ImmutableArray<int> bursts =
        [
            .. answer["bursts"].Items().Select(b => b.Count() is var size and > 0 ? size : throw b.Wrong("should be at least 1")),
        ];
        var frames = answer["frames"].Count();
        if (bursts.Sum(b => (long)b) != frames)
            throw answer["frames"].Wrong("its bursts add up to another number");
        if (frames < keepers)
            throw answer["frames"].Wrong("should not be below the keepers");
        var assurance = Chance(answer["assurance"]);
        ImmutableArray<double> probabilities = answer.Find("probabilities") is { } law ? [.. law.Items().Select(Chance)] : [];
        if (!probabilities.IsEmpty && (probabilities.Length != frames + 1 || Math.Abs(probabilities.Sum() - 1) > 1e-6))
            throw answer["probabilities"].Wrong("should hold a probability for each number of keepers, adding up to 1");
        return new(
            number,
            new([.. answer["key"].Members().Select(m => KeyValuePair.Create(m.Name, m.Value.Text()))]),
            answer.Find("conditions") is { } conditions ? SavedConditions.Read(conditions, Conditions.None) : Conditions.None,
            ShutterSpeed.FromSeconds(seconds),
            keepers,
            bursts,
            assurance,
            answer.Find("wantedAssurance") is { } wanted ? Chance(wanted) : assurance,
            probabilities
        );
    }

    private static double Chance(JsonPlace place) =>
        place.Number() is var chance and >= 0 and <= 1 ? chance : throw place.Wrong("should be from 0 to 1");
}
