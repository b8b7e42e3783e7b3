using System.Collections.Immutable;
using Handhold.Prediction;

namespace Handhold;

/// <summary>How lucky each tested day was, and whether the days show progress.</summary>
public sealed class DaysAnswer
{
    internal DaysAnswer(KeeperCurve curve, ImmutableArray<DayLuck> days, DayTrend? trend, ImmutableArray<Status> statuses) =>
        (Curve, Days, Trend, Statuses) = (curve, days, trend, statuses);

    /// <summary>The curve that was asked.</summary>
    public KeeperCurve Curve { get; }

    /// <summary>The days, by photographer, then by label.</summary>
    public ImmutableArray<DayLuck> Days { get; }

    /// <summary>The trend over the days in the order of their labels; null with one day, where one has no label, or where levels vary and too few points stand for it.</summary>
    public DayTrend? Trend { get; }

    /// <summary>Whether labels put the days in an order: there are several, and no day lacks one.</summary>
    public bool AreInOrder => Days.All(d => d.Session is not null) && Days.DistinctBy(d => d.Session).Count() > 1;

    /// <summary>What the reader should know of this answer.</summary>
    public ImmutableArray<Status> Statuses { get; }

    /// <summary>The answer as a person would say it.</summary>
    public string Sentence =>
        Days.Length == 1 ? "The frames are of one day, which shows neither luck nor progress: label the sessions, and shoot on more days."
        : Trend is null && AreInOrder
            ? "Whether the days show progress cannot be told: the points that stand for it are too few. More days would help, or a fit without levels that vary."
        : Trend is not { } trend
            ? "The labels put the days in no order, so they show no progress: give every session a label, such as its date."
        : $"From {trend.First} to {trend.Last} {Change(trend)} ({Say.Percent(trend.Interval.Level)} interval {Say.Change(trend.Interval.Lower)} to {Say.Change(trend.Interval.Upper)} stops, the days' luck left aside{OneForAll}).";

    /// <inheritdoc cref="Sentence" />
    public override string ToString() => Sentence;

    private string OneForAll => Days.Select(d => d.Photographer).Distinct().Count() > 1 ? ", one change for all photographers" : "";

    private static string Change(DayTrend trend) =>
        !trend.IsTold ? "no change can be told from the luck of days"
        : trend.Stops.Value > 0 ? $"speeds {Say.Size(trend.Stops.Value)} stops slower became possible"
        : $"speeds {Say.Size(trend.Stops.Value)} stops faster became necessary";
}
