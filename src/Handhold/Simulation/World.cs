using Handhold.Randomness;

namespace Handhold.Simulation;

/// <summary>A photographer and setup whose numbers are known, and how much days and grips vary.</summary>
/// <remarks>
/// P(keeper) = floor + (ceiling - floor) / (1 + exp(-b (tau + u + w - x))), x = log2(exposure / 1 s), u ~ normal(0, session luck) once a
/// day, w ~ normal(0, burst luck) once a burst.
/// </remarks>
public sealed partial record World
{
    /// <summary>Half point tau of the uncapped curve on a usual day, log2 seconds.</summary>
    public required double HalfPoint { get; init; }

    /// <summary>Steepness b at half, logits per stop, positive.</summary>
    public required double Steepness { get; init; }

    /// <summary>Rate of very fast frames, above the floor and at most 1.</summary>
    public double Ceiling { get; init; } = 1;

    /// <summary>Rate of very slow frames, at least 0.</summary>
    public double Floor { get; init; }

    /// <summary>Standard deviation of a day's shift, stops.</summary>
    public double SessionLuck { get; init; }

    /// <summary>Standard deviation of a burst's shift, stops.</summary>
    public double BurstLuck { get; init; }

    /// <summary>A world drawn from the priors of a model; what the model fixes is fixed.</summary>
    /// <param name="model">Ceiling, floor, luck and their priors.</param>
    /// <param name="halfPoint">Prior of the half point at the conditions meant, log2 seconds.</param>
    /// <param name="stream">Chance.</param>
    public static World Draw(KeeperModel model, NormalPrior halfPoint, RandomStream stream)
    {
        ArgumentNullException.ThrowIfNull(model);
        ArgumentNullException.ThrowIfNull(halfPoint);
        ArgumentNullException.ThrowIfNull(stream);
        var priors = model.Priors;
        var lucky = model.Luck == LuckKind.Normal ? 1 : 0;
        return new()
        {
            HalfPoint = halfPoint.Mean + halfPoint.StandardDeviation * stream.Normal(),
            Steepness = priors.Steepness.Median * Math.Exp(priors.Steepness.LogStandardDeviation * stream.Normal()),
            Ceiling = model.Ceiling.Value ?? 1 - stream.Beta(priors.CeilingLoss.A, priors.CeilingLoss.B),
            Floor = model.Floor.Value ?? stream.Beta(priors.Floor.A, priors.Floor.B),
            SessionLuck = lucky * priors.SessionLuck.Scale * Math.Abs(stream.Normal()),
            BurstLuck = lucky * priors.BurstLuck.Scale * Math.Abs(stream.Normal()),
        };
    }

    /// <summary>P(keeper) and P(reject) of one frame, neither by subtraction.</summary>
    /// <param name="log2Seconds">The exposure.</param>
    /// <param name="luck">Shift by day and grip, stops; positive lets slower frames succeed.</param>
    internal (double Keeper, double Reject) Frame(double log2Seconds, double luck)
    {
        var eta = Steepness * (HalfPoint + luck - log2Seconds);
        var small = Math.Exp(-Math.Abs(eta));
        var (sharp, soft) = eta >= 0 ? (1 / (1 + small), small / (1 + small)) : (small / (1 + small), 1 / (1 + small));
        return (Floor + (Ceiling - Floor) * sharp, 1 - Ceiling + (Ceiling - Floor) * soft);
    }
}
