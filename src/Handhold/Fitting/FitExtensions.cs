using System.Collections.Immutable;
using Handhold.Fitting;

namespace Handhold;

/// <summary>Fitting a model to a table.</summary>
public static class FitExtensions
{
    /// <summary>Fits one curve for each combination of the splitting columns present.</summary>
    /// <remarks>
    /// The posterior by nested product quadrature, with terms by importance sampling: see the methods pages on the model and on terms. The likelihood and bias-reduced estimators curve by curve: see the methods
    /// page on them. Deterministic: the same frames in any order give the same bits on one machine.
    /// A posterior's ceiling and floor, when estimated, are shared over the curves; half point, steepness and luck are each curve's own.
    /// </remarks>
    /// <param name="model">The model.</param>
    /// <param name="table">Judged frames.</param>
    /// <param name="progress">Told the share done, 0 to 1.</param>
    /// <param name="cancellation">Stops the work.</param>
    /// <exception cref="CellException">Rows cannot make a curve; the message names the curve, the value and the remedy.</exception>
    /// <exception cref="ArgumentException">A number of the model is out of range.</exception>
    /// <exception cref="OperationCanceledException">The work was cancelled.</exception>
    public static FittedCurves Fit(
        this KeeperModel model,
        FrameTable table,
        IProgress<double>? progress = null,
        CancellationToken cancellation = default
    )
    {
        ArgumentNullException.ThrowIfNull(model);
        ArgumentNullException.ThrowIfNull(table);
        model.Check();
        var rows = AlsoAsRejects(model, table, CurveRows.Split(model, table));
        if (model.Estimator != Estimator.Posterior)
            return LinearEstimation.Run(model, rows, progress, cancellation);
        return PosteriorFit.Run(model, rows, progress, cancellation);
    }

    /// <summary>Rows that know the curve they make when frames not judged are called rejects, fitted when first asked.</summary>
    private static ImmutableArray<CurveRows> AlsoAsRejects(KeeperModel model, FrameTable table, ImmutableArray<CurveRows> rows)
    {
        if (rows.All(r => r.Data.NotJudged.IsEmpty))
            return rows;
        Lazy<FittedCurves> fit = new(() => model.Fit([.. table.Select(cell => cell.AsRejects())]));
        return [.. rows.Select((r, i) => r.Data.NotJudged.IsEmpty ? r : r with { AsRejects = new(() => fit.Value[i]) })];
    }
}
