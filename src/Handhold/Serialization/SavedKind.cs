using System.Globalization;
using System.Text.Json;

namespace Handhold.Serialization;

/// <summary>What a text is meant to be, in the words of a complaint.</summary>
/// <param name="Name">Such as <c>the saved fit</c>.</param>
/// <param name="Remedy">What to do when it is broken.</param>
/// <param name="Refused">The exception of a message and its cause.</param>
internal sealed record SavedKind(string Name, string Remedy, Func<string, Exception?, FormatException> Refused)
{
    /// <summary>Deeper than anything saved, shallow enough for any stack.</summary>
    private const int DeepestNesting = 16;

    internal static SavedKind Fit { get; } =
        new("the saved fit", "Save the fit again, or fit the table.", (message, cause) => new SavedFitException(message, cause));

    internal static SavedKind Plans { get; } =
        new("the plans", "Write them again with `handhold frames … --json`.", (message, cause) => new SavedPlansException(message, cause));

    /// <summary>The text as JSON, within bounds of length and depth.</summary>
    internal JsonDocument Parse(string json)
    {
        if (json.Length > SavedFit.LargestText)
            throw Refused(
                FormattableString.Invariant(
                    $"{Sentence} have {json.Length} characters, more than the {SavedFit.LargestText} that are read."
                ),
                null
            );
        try
        {
            return JsonDocument.Parse(json, new() { MaxDepth = DeepestNesting, AllowDuplicateProperties = false });
        }
        catch (JsonException broken)
        {
            throw Unwritten($"Line {((broken.LineNumber ?? 0) + 1).ToString(CultureInfo.InvariantCulture)}", broken);
        }
        catch (InvalidOperationException broken) // a name with half a surrogate pair
        {
            throw Unwritten("A name", broken);
        }
    }

    private FormatException Unwritten(string place, Exception broken) =>
        Refused($"{place} of {Name} is not as JSON is written. {Remedy}", broken);

    /// <summary>Refuses what a version to come has written.</summary>
    internal void CheckVersion(JsonPlace root)
    {
        var version = root["schemaVersion"].Count();
        if (version == SavedFit.SchemaVersion)
            return;
        var by = root.Find("handhold") is { } handhold ? $"by handhold {handhold.Text()} " : "";
        throw Refused(
            FormattableString.Invariant(
                $"{Sentence} were saved {by}in version {version} of the format; handhold {HandholdVersion.Text} reads version {SavedFit.SchemaVersion}. Use that handhold, or write them again."
            ),
            null
        );
    }

    private string Sentence => "The numbers of " + Name;
}
