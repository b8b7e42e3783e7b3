using System.Text.Json;

namespace Handhold.Serialization;

/// <summary>Reads a saved fit: checks it, and fits its counts again.</summary>
internal static class SavedFitReader
{
    /// <summary>Deeper than any fit, shallow enough for any stack.</summary>
    private const int DeepestNesting = 16;

    internal static FittedCurves Read(string json, IProgress<double>? progress, CancellationToken cancellation)
    {
        if (json.Length > SavedFit.LargestText)
            throw new SavedFitException(
                FormattableString.Invariant(
                    $"The saved fit has {json.Length} characters, more than the {SavedFit.LargestText} that are read."
                )
            );
        using var document = Parse(json);
        var root = new JsonPlace(document.RootElement, "");
        CheckVersion(root);
        var model = SavedModel.Read(root);
        var curves = root["curves"].Items().ToArray();
        FrameTable table = [.. curves.SelectMany(SavedData.Read)];
        try
        {
            return model.Fit(table, progress, cancellation);
        }
        catch (ArgumentException refused)
        {
            throw new SavedFitException($"The saved fit cannot be fitted again: {refused.Message}", refused);
        }
    }

    private static JsonDocument Parse(string json)
    {
        try
        {
            return JsonDocument.Parse(json, new() { MaxDepth = DeepestNesting, AllowDuplicateProperties = false });
        }
        catch (JsonException broken)
        {
            throw new SavedFitException(
                FormattableString.Invariant(
                    $"Line {(broken.LineNumber ?? 0) + 1} of the saved fit is not as JSON is written. Save the fit again, or fit the table."
                ),
                broken
            );
        }
    }

    private static void CheckVersion(JsonPlace root)
    {
        var version = root["schemaVersion"].Count();
        if (version != SavedFit.SchemaVersion)
            throw new SavedFitException(
                FormattableString.Invariant(
                    $"This fit was saved by handhold {root["handhold"].Text()} in version {version} of the format; handhold {HandholdVersion.Text} reads version {SavedFit.SchemaVersion}. Ask it with that handhold, or fit the table again."
                )
            );
    }
}
