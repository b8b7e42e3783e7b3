using System.Collections.Immutable;
using Handhold.Curves;
using Handhold.Models;
using Handhold.Solvers;

namespace Handhold.Fitting;

/// <summary>The likelihood and bias-reduced estimators, each curve by itself.</summary>
internal static class LinearEstimation
{
    internal static FittedCurves Run(
        KeeperModel model,
        ImmutableArray<CurveRows> rows,
        IProgress<double>? progress,
        CancellationToken cancellation
    ) => new(model, EachCurve.Do(rows, row => Fit(model, row, cancellation), progress, cancellation)) { LogEvidence = double.NaN };

    private static KeeperCurve Fit(KeeperModel model, CurveRows rows, CancellationToken cancellation)
    {
        var place = $"Curve {rows.Key}";
        var layout = TermChoice.Layout(model, rows.Data.Cells, place);
        var problem = layout.Problem(rows.Data.Cells, model);
        var estimator = model.Estimator == Estimator.BiasReduced ? BinomialEstimator.BiasReduced : BinomialEstimator.Likelihood;
        try
        {
            Lazy<Separation> separation = new(() => Separation.Of(problem));
            var shared = model.Luck == LuckKind.None || separation.Value.IsSeparated ? null : Shared(model, rows.Data.Cells, layout, place);
            var grouped =
                model.Varies.IsEmpty || separation.Value.IsSeparated ? null : Grouped(model, rows.Data.Cells, layout, place, cancellation);
            LinearFit linear = new(new(layout, problem, estimator, separation, shared, grouped), rows.Data.Cells, model.Level);
            Lazy<ImmutableArray<ExpectedCount>> expected = new(() => LinearLeaveOneOut.Of(model, rows.Data, linear));
            return new(rows.Key, rows.Data, model, null, [], new(() => LinearStatuses.Of(model, rows.Data, linear, expected.Value)))
            {
                Expected = expected,
                AsRejects = rows.AsRejects,
                Linear = linear,
                LogLikelihood = linear.LogLikelihood,
                Deviance = linear.Deviance,
            };
        }
        catch (AliasedColumnsException aliased)
        {
            throw new CellException(
                place,
                string.Join(" ", aliased.Columns),
                "Leave that term out, or add frames that tell the two apart."
            );
        }
    }

    /// <summary>The fit in which levels vary.</summary>
    private static GroupedCurve Grouped(
        KeeperModel model,
        ImmutableArray<FrameCell> cells,
        DesignLayout layout,
        string place,
        CancellationToken cancellation
    )
    {
        var groups = GroupLayout.Of(model, layout, cells, place);
        try
        {
            return new(groups, new(groups.Problem(cells, model), model.Nodes, cancellation), cells);
        }
        catch (SolverException) when (groups.AllAlike(cells) is { } column)
        {
            throw new CellException(
                place,
                $"each {column} kept or lost all of its frames, so no spread between them is too large.",
                "Let another column vary, or add frames at speeds where some are kept and some are not."
            );
        }
    }

    /// <summary>The fit with luck in bursts; null where none can be told.</summary>
    private static ClusteredFit? Shared(KeeperModel model, ImmutableArray<FrameCell> cells, DesignLayout layout, string place)
    {
        if (BurstClusters.Of(model, cells, layout, place) is not { } clusters)
            return null;
        try
        {
            return new(clusters, model.Luck == LuckKind.BetaBinomial ? SharedLuck.BetaRates : SharedLuck.NormalShift, model.Nodes);
        }
        catch (SolverException) when (!clusters.AnyMixed)
        {
            throw new CellException(
                place,
                "each of its bursts kept or lost all of its frames, so no sd of normal luck is too large.",
                "Take beta-binomial luck (--luck beta-binomial), which has a limit, or the posterior, whose prior bounds it."
            );
        }
    }
}
