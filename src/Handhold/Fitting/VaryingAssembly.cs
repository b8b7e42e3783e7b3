using System.Collections.Immutable;

namespace Handhold.Fitting;

/// <summary>A finished curve in which levels vary.</summary>
internal static class VaryingAssembly
{
    internal static KeeperCurve Make(
        KeeperModel model,
        CurveRows rows,
        VaryingSample sample,
        Func<CurveShape, (KeeperCurve, KeeperCurve, KeeperCurve)> otherPriors
    )
    {
        var (posterior, typical) = (sample.Posterior, sample.Posterior.Typical);
        var parameters = TermAssembly.Parameters(
            model,
            posterior.Moved,
            (name, value, prior) => posterior.Summary(name, d => value(d.Typical), model.Level, prior)
        );
        var conditions = typical.Reference(rows.Data.Cells);
        var shape = TermAssembly.MedianShape(typical, posterior.Moved.Read(conditions));
        VaryingLeaveOneOut others = new(model, rows.Data, sample);
        Lazy<ImmutableArray<VaryingLevels>> levels = new(() => VaryingSummaries.Of(model, rows.Data, posterior, conditions));
        return new(
            rows.Key,
            rows.Data,
            model,
            posterior.Moved.Tau0,
            parameters,
            new(() => VaryingStatuses.Of(model, rows.Data, sample, parameters, levels.Value, others))
        )
        {
            Expected = new(() => others.All),
            AsRejects = rows.AsRejects,
            LogLikelihood = sample.LogLikelihood,
            Deviance = double.NaN,
            Term = typical,
            Varying = posterior,
            FindLevels = levels,
            Posterior = typical.At(conditions),
            MedianShape = shape,
            Sampling = sample.Sampling,
            OtherPriors = new(() => otherPriors(shape)),
        };
    }
}
