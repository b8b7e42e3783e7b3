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
        Interval? interval,
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

    /// <summary>Interval of the difference, stops: equal-tailed of posteriors, otherwise by profile, Fieller's method or delta. Null when a side does not reach the rate, or an end is unbounded.</summary>
    public Interval? Interval { get; }

    /// <summary>Probability, or without posteriors the one-sided confidence, that B allows slower speeds than A.</summary>
    public double? ProbabilityBetter { get; }

    /// <summary>Under which conditions A was asked; both sides may be one curve with terms.</summary>
    public Conditions ConditionsOfA { get; internal init; } = Conditions.None;

    /// <summary>Under which conditions B was asked.</summary>
    public Conditions ConditionsOfB { get; internal init; } = Conditions.None;

    /// <summary>Probability, or one-sided confidence, that B allows more than <paramref name="stops"/> stops slower than A; null when a side does not reach the rate.</summary>
    public double? ProbabilityBetterBy(Stops stops) => BetterBy?.Invoke(stops.Value);

    internal Func<double, double>? BetterBy { get; init; }

    /// <summary>What the reader should know.</summary>
    public ImmutableArray<Status> Statuses { get; }

    /// <summary>The answer as a person would say it.</summary>
    public string Sentence =>
        Stops is { } stops && ProbabilityBetter is { } better
            ? $"{NameOfB} {(stops.Value >= 0 ? "allows" : "needs")} speeds {Say.Size(stops.Value)} stops {(stops.Value >= 0 ? "slower" : "faster")} than {NameOfA} for a keeper rate of {Say.Percent(Rate)} ({Range()}); the {(A.Linear is null ? "chance" : "confidence")} that it is the steadier one is {Say.Percent(better)}."
            : Statuses[^1].Message;

    /// <inheritdoc cref="Sentence" />
    public override string ToString() => Sentence;

    private string NameOfA => Name(A, ConditionsOfA, B, ConditionsOfB);

    private string NameOfB => Name(B, ConditionsOfB, A, ConditionsOfA);

    private string Range() =>
        Interval is { } interval
            ? $"{Say.Percent(interval.Level)} interval {Say.Change(interval.Lower)} to {Say.Change(interval.Upper)}"
            : "the data bound it on one side at most";

    /// <summary>What tells one side from the other.</summary>
    private static string Name(KeeperCurve side, Conditions under, KeeperCurve other, Conditions otherUnder)
    {
        string[] own =
        [
            .. side.Key.Values.Where(v => other.Key[v.Key] != v.Value).Select(v => v.Value),
            .. Conditions
                .ColumnNames.Concat(under.Others.Keys)
                .Where(c => under[c] != otherUnder[c])
                .Select(c => under[c])
                .OfType<string>(),
        ];
        return own.Length == 0 ? side.Key.ToString() : string.Join(" · ", own);
    }
}
