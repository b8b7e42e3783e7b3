using System.Collections.Immutable;
using Handhold.Curves;

namespace Handhold.Fitting;

/// <summary>A finished curve in which levels vary.</summary>
internal static class VaryingAssembly
{
    internal static KeeperCurve Make(KeeperModel model, CurveRows rows, VaryingSample sample) =>
        Make(model, rows, sample, sample.Posterior);

    private static KeeperCurve Make(KeeperModel model, CurveRows rows, VaryingSample sample, VaryingPosterior posterior)
    {
        var typical = posterior.Typical;
        var parameters = TermAssembly.Parameters(model, typical);
        var conditions = typical.Reference(rows.Data.Cells);
        Lazy<ImmutableArray<VaryingLevels>> levels = new(() => VaryingSummaries.Of(model, rows.Data, posterior, conditions));
        return new(
            rows.Key,
            rows.Data,
            model,
            posterior.Moved.Tau0,
            parameters,
            new(() => VaryingStatuses.Of(model, rows.Data, sample, parameters))
        )
        {
            Expected = new(() => []),
            AsRejects = rows.AsRejects,
            LogLikelihood = sample.LogLikelihood,
            Deviance = double.NaN,
            Term = typical,
            Varying = posterior,
            FindLevels = levels,
            Posterior = typical.At(conditions),
            MedianShape = TermAssembly.MedianShape(typical, posterior.Moved.Read(conditions)),
            Sampling = sample.Sampling,
            OtherPriors = new(() => (Weighed(1), Weighed(2), Weighed(0.5))),
        };

        KeeperCurve Weighed(double by) =>
            Make(model, rows, sample, posterior.Weighed(draw => Math.Exp(PriorChange.Log(model.Priors, posterior.Spreads, draw, by))));
    }
}
