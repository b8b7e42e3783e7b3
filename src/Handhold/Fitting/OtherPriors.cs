namespace Handhold.Fitting;

/// <summary>One curve alone, ceiling and floor held at its medians, when the priors of steepness, luck and spreads are as they are, twice and half as wide.</summary>
internal static class OtherPriors
{
    /// <summary>The model with ceiling and floor held at a curve's medians, so that the curve can be fitted without those it shares them with.</summary>
    internal static KeeperModel Held(KeeperModel model, CurveShape medians) =>
        model with
        {
            Ceiling = Ceiling.Fixed(medians.Ceiling),
            Floor = Floor.Fixed(medians.Floor),
        };

    internal static (KeeperCurve Same, KeeperCurve Widened, KeeperCurve Narrowed) Of(
        KeeperModel model,
        CurveShape medians,
        Func<KeeperModel, KeeperCurve> fit
    )
    {
        var held = Held(model, medians);
        return (Fit(1), Fit(2), Fit(0.5));

        KeeperCurve Fit(double by) =>
            fit(
                held with
                {
                    Priors = held.Priors with
                    {
                        Steepness = held.Priors.Steepness with { LogStandardDeviation = by * held.Priors.Steepness.LogStandardDeviation },
                        SessionLuck = new(by * held.Priors.SessionLuck.Scale),
                        BurstLuck = new(by * held.Priors.BurstLuck.Scale),
                        Spreads = held.Priors.Spreads.Widened(by),
                    },
                }
            );
    }
}
