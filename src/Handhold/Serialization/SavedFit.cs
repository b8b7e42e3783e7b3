using System.Text.Json;
using Handhold.Serialization;

namespace Handhold;

/// <summary>Fits as JSON text, to be kept and asked again.</summary>
/// <remarks>
/// The text holds the model, the priors, the pooled counts and what was found, and no date, path or type name. Reading it fits the counts
/// again, so that on one platform every answer is equal to the last bit.
/// </remarks>
public static class SavedFit
{
    /// <summary>The version of the format that is written, and the only one that is read.</summary>
    public const int SchemaVersion = 1;

    /// <summary>The most characters that are read: 16 777 216.</summary>
    public const int LargestText = 1 << 24;

    /// <summary>The JSON of a fit.</summary>
    /// <param name="curves">The fit.</param>
    /// <param name="withCells">Whether the counts go along; without them the text is a report that cannot be read again.</param>
    public static string Write(FittedCurves curves, bool withCells = true)
    {
        ArgumentNullException.ThrowIfNull(curves);
        return JsonText.Of(json => SavedFitWriter.Write(json, curves, withCells, (_, _) => { }));
    }

    /// <summary>The JSON of a fit as a report, with more about each curve than can be read again.</summary>
    /// <param name="curves">The fit.</param>
    /// <param name="withCells">Whether the counts go along.</param>
    /// <param name="more">Writes further members of a curve's object.</param>
    public static string Report(FittedCurves curves, bool withCells, Action<Utf8JsonWriter, KeeperCurve> more)
    {
        ArgumentNullException.ThrowIfNull(curves);
        ArgumentNullException.ThrowIfNull(more);
        return JsonText.Of(json => SavedFitWriter.Write(json, curves, withCells, more));
    }

    /// <summary>Reads what <see cref="Write"/> wrote.</summary>
    /// <param name="json">The text, at most <see cref="LargestText"/> characters.</param>
    /// <param name="progress">Told the share done, 0 to 1.</param>
    /// <param name="cancellation">Stops the work.</param>
    /// <exception cref="SavedFitException">The text is no saved fit, was saved by a version to come, or contradicts itself.</exception>
    public static FittedCurves Read(string json, IProgress<double>? progress = null, CancellationToken cancellation = default)
    {
        ArgumentNullException.ThrowIfNull(json);
        return SavedFitReader.Read(json, progress, cancellation);
    }
}
