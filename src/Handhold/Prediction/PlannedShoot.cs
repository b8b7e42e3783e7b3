using System.Collections.Immutable;

namespace Handhold;

/// <summary>A plan that was handed out: so many frames, and the chance that was promised.</summary>
public sealed class PlannedShoot
{
    internal PlannedShoot(
        int number,
        CurveKey key,
        Conditions conditions,
        ShutterSpeed at,
        int keepers,
        ImmutableArray<int> bursts,
        double assurance,
        double wantedAssurance,
        ImmutableArray<double> probabilities
    ) =>
        (Number, Key, Conditions, At, Keepers, Bursts, Assurance, WantedAssurance, Probabilities) = (
            number,
            key,
            conditions,
            at,
            keepers,
            bursts,
            assurance,
            wantedAssurance,
            probabilities
        );

    /// <summary>The plan of an answer.</summary>
    /// <param name="answer">An answer that found a number of frames.</param>
    /// <param name="number">What the plan is called, from 1.</param>
    /// <exception cref="ArgumentException">The answer has no number of frames.</exception>
    public static PlannedShoot Of(FramesNeededAnswer answer, int number = 1)
    {
        ArgumentNullException.ThrowIfNull(answer);
        if (!answer.Reachable)
            throw new ArgumentException($"There is no plan to keep: {answer.Sentence}", nameof(answer));
        return new(
            number,
            answer.Curve.Key,
            answer.Conditions,
            answer.At,
            answer.Keepers,
            answer.Bursts,
            answer.Assurance,
            answer.WantedAssurance,
            answer.Probabilities
        );
    }

    /// <summary>Number of the plan, from 1; frames with a column <c>plan</c> belong to the plan of that number.</summary>
    public int Number { get; }

    /// <summary>Whose frames are meant.</summary>
    public CurveKey Key { get; }

    /// <summary>Where terms stood.</summary>
    public Conditions Conditions { get; }

    /// <summary>The shutter speed.</summary>
    public ShutterSpeed At { get; }

    /// <summary>Keepers wanted.</summary>
    public int Keepers { get; }

    /// <summary>Frames in each burst.</summary>
    public ImmutableArray<int> Bursts { get; }

    /// <summary>Frames in all.</summary>
    public int Frames => Bursts.Sum();

    /// <summary>The chance of at least <see cref="Keepers"/> keepers that was promised, 0 to 1.</summary>
    public double Assurance { get; }

    /// <summary>The chance that was asked for; the smallest number of frames that reaches it promises a little more.</summary>
    public double WantedAssurance { get; }

    /// <summary>Promised probability of 0, 1, ..., <see cref="Frames"/> keepers; empty where it was not written down.</summary>
    public ImmutableArray<double> Probabilities { get; }

    /// <summary>Whether a row holds frames of this plan: its curve, its conditions, its speed to a reader, and its number where the row names one.</summary>
    internal bool Covers(FrameCell row) =>
        row.Exposure.IsSameSpeed(At)
        && row.Conditions["plan"] is var plan
        && (plan is null || plan == FormattableString.Invariant($"{Number}"))
        && Key.Values.All(v => row.Conditions[v.Key] == v.Value)
        && Conditions.Recorded.All(c => row.Conditions[c] == Conditions[c]);
}
