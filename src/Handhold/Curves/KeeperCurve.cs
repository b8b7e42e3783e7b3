using System.Collections.Immutable;
using Handhold.Curves;

namespace Handhold;

/// <summary>A fitted keeper curve. Ask it: <c>curve.FramesNeeded(...)</c>, <c>curve.Slowest(...)</c>, <c>curve.RateAt(...)</c>.</summary>
public sealed class KeeperCurve
{
    private readonly Lazy<ImmutableArray<Status>> _statuses;
    private readonly Lazy<Conditions> _reference;
    private readonly Lazy<ImmutableArray<TermInStops>> _inStops;

    internal KeeperCurve(
        CurveKey key,
        CurveData data,
        KeeperModel model,
        NormalPrior? halfPointPrior,
        ImmutableArray<ParameterSummary> parameters,
        Lazy<ImmutableArray<Status>> statuses
    )
    {
        (Key, Data, Model, HalfPointPrior, Parameters, _statuses) = (key, data, model, halfPointPrior, parameters, statuses);
        _reference = new(() => Term?.Reference(data.Cells) ?? Conditions.None);
        _inStops = new(() => Term?.InStops(ReferenceConditions, [.. data.Cells.Select(c => c.Conditions).Distinct()], model.Level) ?? []);
    }

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

    /// <summary>The levels that a posterior fitted together, column by column; empty where none vary. Computed when first asked.</summary>
    public ImmutableArray<VaryingLevels> Levels => FindLevels?.Value ?? [];

    /// <summary>The terms beside the exposure; a question must say where they stand.</summary>
    public ImmutableArray<CurveTerm> Terms => Linear?.Terms ?? Term?.Moved.Terms ?? [];

    /// <summary>What each term costs or buys, in stops, at stated conditions; without those that depend on the rate, since they change the steepness.</summary>
    public ImmutableArray<TermInStops> InStops => Linear?.InStops ?? _inStops.Value;

    /// <summary>Conditions that frames were shot under, every label at its reference where possible: what a report is made at when none are asked for.</summary>
    public Conditions ReferenceConditions => Linear?.ReferenceConditions ?? _reference.Value;

    /// <summary>Where the terms stand, in words: "stabiliser off, magnification 0.02"; empty where nothing is said of any.</summary>
    /// <param name="conditions">What was said.</param>
    public string Under(Conditions conditions)
    {
        ArgumentNullException.ThrowIfNull(conditions);
        return EffectWords.Under(Terms, conditions);
    }

    /// <summary>How well the points of a posterior with terms stand for it; null where no points were drawn.</summary>
    public Sampling? Sampling { get; internal init; }

    /// <summary>Of a posterior: tau0, log2b, and those of ceiling, floor, the terms' effects, sessionLuck, burstLuck that were estimated.</summary>
    public ImmutableArray<ParameterSummary> Parameters { get; }

    /// <summary>What the reader should know.</summary>
    public ImmutableArray<Status> Statuses => _statuses.Value;

    /// <summary>Log-likelihood on the Bernoulli scale (no binomial coefficients): at the maximum, or at the posterior medians without luck.</summary>
    public double LogLikelihood { get; internal init; }

    /// <summary>Twice the distance of <see cref="LogLikelihood"/> from the saturated model on cells pooled by exposure and terms.</summary>
    public double Deviance { get; internal init; }

    /// <summary>The curve at the posterior medians, without luck; null for the other estimators.</summary>
    public CurveShape? MedianShape { get; internal init; }

    /// <summary>The posterior that answers are made of; with terms that of the reference conditions.</summary>
    internal CurvePosterior Posterior { get; init; } = null!;

    /// <summary>The keepers at each speed against what the other speeds lead to expect; empty where there is nothing to expect from.</summary>
    internal Lazy<ImmutableArray<ExpectedCount>> Expected { get; init; } = null!;

    /// <summary>Points of the posterior that know the luck of every tested day; null where no luck is known. Computed when first asked.</summary>
    internal Lazy<TermPosterior>? TestedDays { get; init; }

    /// <summary>The curve when all frames not judged are called rejects; null where there are none, computed when first asked.</summary>
    internal Lazy<KeeperCurve>? AsRejects { get; init; }

    /// <summary>The posterior of a curve with terms.</summary>
    internal TermPosterior? Term { get; init; }

    /// <summary>The posterior of a curve in which levels vary; <see cref="Term"/> is then that of a typical level.</summary>
    internal VaryingPosterior? Varying { get; init; }

    internal Lazy<ImmutableArray<VaryingLevels>>? FindLevels { get; init; }

    /// <summary>The posterior under conditions; what they are silent of is as all frames had it.</summary>
    /// <exception cref="ConditionsException">The conditions lack a term, or have a level that no frame had.</exception>
    internal CurvePosterior PosteriorUnder(Conditions conditions) =>
        Term is { } term ? term.At(conditions.Or(term.Moved.Shared)) : Posterior;

    /// <summary>This curve alone, ceiling and floor held at their medians, when the priors of steepness and luck are as they are, twice and half as wide; computed when first asked.</summary>
    internal Lazy<(KeeperCurve Same, KeeperCurve Widened, KeeperCurve Narrowed)> OtherPriors { get; init; } = null!;
}
