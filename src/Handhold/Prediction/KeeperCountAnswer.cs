using System.Collections.Immutable;

namespace Handhold;

/// <summary>How many keepers a planned shoot will bring: the whole predictive distribution.</summary>
public sealed class KeeperCountAnswer : Answer
{
    internal KeeperCountAnswer(
        KeeperCurve curve,
        ShutterSpeed at,
        int frames,
        ImmutableArray<double> probabilities,
        bool withinTested,
        ImmutableArray<Status> statuses
    )
        : base(curve, withinTested, !probabilities.IsEmpty, statuses) => (At, Frames, Probabilities) = (at, frames, probabilities);

    /// <summary>The speed asked.</summary>
    public ShutterSpeed At { get; }

    /// <summary>Frames planned.</summary>
    public int Frames { get; }

    /// <summary>Probability of 0, 1, ..., <see cref="Frames"/> keepers; empty when declined.</summary>
    public ImmutableArray<double> Probabilities { get; }

    /// <inheritdoc />
    public override string Sentence => throw new NotSupportedException();
}
