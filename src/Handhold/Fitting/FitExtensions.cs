namespace Handhold;

/// <summary>Fitting a model to a table.</summary>
public static class FitExtensions
{
    /// <summary>Fits one curve for each combination of the splitting columns present.</summary>
    /// <param name="model">The model.</param>
    /// <param name="table">Judged frames.</param>
    /// <param name="progress">Told the share done, 0 to 1.</param>
    /// <param name="cancellation">Stops the work.</param>
    public static FittedCurves Fit(
        this KeeperModel model,
        FrameTable table,
        IProgress<double>? progress = null,
        CancellationToken cancellation = default
    ) => throw new NotSupportedException();
}
