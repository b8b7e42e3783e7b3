using Handhold.Solvers;

namespace Handhold.Serialization;

/// <summary>Reads a saved fit: checks it, and fits its counts again.</summary>
internal static class SavedFitReader
{
    internal static FittedCurves Read(string json, IProgress<double>? progress, CancellationToken cancellation)
    {
        using var document = SavedKind.Fit.Parse(json);
        JsonPlace root = new(document.RootElement, "", SavedKind.Fit);
        SavedKind.Fit.CheckVersion(root);
        var model = SavedModel.Read(root);
        var curves = root["curves"].Items().ToArray();
        FrameCell[] cells = [.. curves.SelectMany(SavedData.Read)];
        try
        {
            return model.Fit([.. cells], progress, cancellation);
        }
        catch (Exception refused) when (refused is ArgumentException or OverflowException or SolverException)
        {
            throw new SavedFitException($"The saved fit cannot be fitted again: {refused.Message}", refused);
        }
    }
}
