using System.Collections.Immutable;
using Handhold.Prediction;

namespace Handhold;

/// <summary>The keeper rate at a speed.</summary>
public sealed class RateAnswer : Answer
{
    internal RateAnswer(
        Question question,
        ShutterSpeed at,
        RateEstimate? rate,
        LuckUsed luck,
        bool withinTested,
        ImmutableArray<Status> statuses
    )
        : base(question, withinTested, rate is not null, statuses) => (At, Rate, Luck) = (at, rate, luck);

    /// <summary>The speed asked.</summary>
    public ShutterSpeed At { get; }

    /// <summary>The rate; null when declined.</summary>
    public RateEstimate? Rate { get; }

    /// <summary>The burst luck that the rate is averaged over.</summary>
    public LuckUsed Luck { get; }

    /// <inheritdoc />
    public override string Sentence =>
        Rate is { } rate
            ? $"At {At}, {Say.Percent(rate.Mean)} of the frames are keepers ({Say.Percent(rate.Interval.Level)} interval {Say.Percent(rate.Interval.Lower)} to {Say.Percent(rate.Interval.Upper)})."
            : Statuses[0].Message;
}
