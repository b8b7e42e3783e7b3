using System.Collections.Immutable;
using Handhold.Curves;

namespace Handhold;

/// <summary>A fitted keeper curve. Ask it: <c>curve.FramesNeeded(...)</c>, <c>curve.Slowest(...)</c>, <c>curve.RateAt(...)</c>.</summary>
public sealed class KeeperCurve
{
    private readonly Lazy<ImmutableArray<Status>> _statuses;

    internal KeeperCurve(
        CurveKey key,
        CurveData data,
        KeeperModel model,
        NormalPrior? halfPointPrior,
        ImmutableArray<ParameterSummary> parameters,
        Lazy<ImmutableArray<Status>> statuses
    ) => (Key, Data, Model, HalfPointPrior, Parameters, _statuses) = (key, data, model, halfPointPrior, parameters, statuses);

    /// <summary>Which rows made it.</summary>
    public CurveKey Key { get; }

    /// <summary>The pooled data.</summary>
    public CurveData Data { get; }

    /// <summary>The model that was fitted.</summary>
    public KeeperModel Model { get; }

    /// <summary>The prior of the half point at this curve's own conditions, log2 seconds; null where no prior was used.</summary>
    public NormalPrior? HalfPointPrior { get; }

    /// <summary>How it was estimated: <c>posterior</c>, <c>bias-reduced</c> or <c>likelihood</c>.</summary>
    public string Estimator =>
        Model.Estimator switch
        {
            Handhold.Estimator.BiasReduced => "bias-reduced",
            Handhold.Estimator.Likelihood => "likelihood",
            _ => "posterior",
        };

    /// <summary>What the likelihood or bias-reduced estimator found; null for a posterior.</summary>
    public LinearFit? Linear { get; internal init; }

    /// <summary>Of a posterior: tau0, log2b, and those of ceiling, floor, sessionLuck, burstLuck that were estimated.</summary>
    public ImmutableArray<ParameterSummary> Parameters { get; }

    /// <summary>What the reader should know.</summary>
    public ImmutableArray<Status> Statuses => _statuses.Value;

    /// <summary>Log-likelihood on the Bernoulli scale (no binomial coefficients): at the maximum, or at the posterior medians without luck.</summary>
    public double LogLikelihood { get; internal init; }

    /// <summary>Twice the distance of <see cref="LogLikelihood"/> from the saturated model on cells pooled by exposure and terms.</summary>
    public double Deviance { get; internal init; }

    /// <summary>The curve at the posterior medians, without luck; null for the other estimators.</summary>
    public CurveShape? MedianShape { get; internal init; }

    /// <summary>The posterior that answers are made of.</summary>
    internal CurvePosterior Posterior { get; init; } = null!;

    /// <summary>This curve alone, ceiling and floor held at their medians, when the priors of steepness and luck are as they are, twice and half as wide; computed when first asked.</summary>
    internal Lazy<(KeeperCurve Same, KeeperCurve Widened, KeeperCurve Narrowed)> OtherPriors { get; init; } = null!;
}
