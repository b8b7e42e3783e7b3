using System.Collections.Immutable;
using Handhold.Prediction;

namespace Handhold;

/// <summary>How many keepers a planned shoot will bring: the whole predictive distribution.</summary>
public sealed class KeeperCountAnswer : Answer
{
    internal KeeperCountAnswer(
        Question question,
        ShutterSpeed at,
        int frames,
        ImmutableArray<double> probabilities,
        bool withinTested,
        ImmutableArray<Status> statuses
    )
        : base(question, withinTested, !probabilities.IsEmpty, statuses) => (At, Frames, Probabilities) = (at, frames, probabilities);

    /// <summary>The speed asked.</summary>
    public ShutterSpeed At { get; }

    /// <summary>Frames planned.</summary>
    public int Frames { get; }

    /// <summary>Probability of 0, 1, ..., <see cref="Frames"/> keepers; empty when declined.</summary>
    public ImmutableArray<double> Probabilities { get; }

    /// <inheritdoc />
    public override string Sentence =>
        HasAnswer
            ? $"{Say.Frames(Frames)} at {At} bring {Say.Number(Probabilities.Select((p, k) => p * k).Sum())} keepers on average; the chance of none is {Say.Percent(Probabilities[0])}."
            : Statuses[0].Message;
}
