using System.Collections.Immutable;
using Handhold.Prediction;

namespace Handhold;

/// <summary>How many stops slower one curve allows than another at a keeper rate.</summary>
public sealed class StopsDifference
{
    internal StopsDifference(
        KeeperCurve a,
        KeeperCurve b,
        double rate,
        Stops? stops,
        CredibleInterval? interval,
        double? probabilityBetter,
        ImmutableArray<Status> statuses
    ) => (A, B, Rate, Stops, Interval, ProbabilityBetter, Statuses) = (a, b, rate, stops, interval, probabilityBetter, statuses);

    /// <summary>The reference.</summary>
    public KeeperCurve A { get; }

    /// <summary>The other side.</summary>
    public KeeperCurve B { get; }

    /// <summary>The keeper rate at which they are compared.</summary>
    public double Rate { get; }

    /// <summary>Median of B minus A; positive when B allows slower speeds. Null when a side does not reach the rate.</summary>
    public Stops? Stops { get; }

    /// <summary>Equal-tailed interval of the difference, stops.</summary>
    public CredibleInterval? Interval { get; }

    /// <summary>Probability that B allows slower speeds than A.</summary>
    public double? ProbabilityBetter { get; }

    /// <summary>Probability that B allows more than <paramref name="stops"/> stops slower than A; null when a side does not reach the rate.</summary>
    public double? ProbabilityBetterBy(Stops stops) => BetterBy?.Invoke(stops.Value);

    internal Func<double, double>? BetterBy { get; init; }

    /// <summary>What the reader should know.</summary>
    public ImmutableArray<Status> Statuses { get; }

    /// <summary>The answer as a person would say it.</summary>
    public string Sentence =>
        Stops is { } stops && Interval is { } interval && ProbabilityBetter is { } better
            ? $"{Name(B, A)} {(stops.Value >= 0 ? "allows" : "needs")} speeds {Say.Size(stops.Value)} stops {(stops.Value >= 0 ? "slower" : "faster")} than {Name(A, B)} for a keeper rate of {Say.Percent(Rate)} ({Say.Percent(interval.Level)} interval {Say.Change(interval.Lower)} to {Say.Change(interval.Upper)}); the chance that it is the steadier one is {Say.Percent(better)}."
            : Statuses[^1].Message;

    /// <inheritdoc cref="Sentence" />
    public override string ToString() => Sentence;

    /// <summary>What tells one side from the other.</summary>
    private static string Name(KeeperCurve side, KeeperCurve other)
    {
        var own = side.Key.Values.Where(v => other.Key[v.Key] != v.Value).Select(v => v.Value).ToArray();
        return own.Length == 0 ? side.Key.ToString() : string.Join(" · ", own);
    }
}
