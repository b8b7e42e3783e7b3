using System.Collections.Immutable;

namespace Handhold;

/// <summary>The exposure that has a wanted keeper rate.</summary>
public sealed class ExposureAnswer : Answer
{
    internal ExposureAnswer(
        KeeperCurve curve,
        double rate,
        ShutterSpeed? exposure,
        ExposureSet set,
        bool withinTested,
        ImmutableArray<Status> statuses
    )
        : base(curve, withinTested, exposure is not null, statuses) => (Rate, Exposure, Set) = (rate, exposure, set);

    /// <summary>The wanted rate.</summary>
    public double Rate { get; }

    /// <summary>Median exposure, unrounded; null when not reachable.</summary>
    public ShutterSpeed? Exposure { get; }

    /// <summary>The exposures compatible with it.</summary>
    public ExposureSet Set { get; }

    /// <inheritdoc />
    public override string Sentence => throw new NotSupportedException();
}
