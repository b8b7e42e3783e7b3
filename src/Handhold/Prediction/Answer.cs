using System.Collections.Immutable;
using Handhold.Prediction;

namespace Handhold;

/// <summary>What every answer carries.</summary>
public abstract class Answer
{
    private protected Answer(Question question, bool withinTested, bool hasAnswer, ImmutableArray<Status> statuses) =>
        (Curve, Whose, WithinTested, HasAnswer, Statuses) = (question.Curve, question.Options.Whose, withinTested, hasAnswer, statuses);

    /// <summary>The curve that was asked.</summary>
    public KeeperCurve Curve { get; }

    /// <summary>Whose rate was meant; null where it was not said, since no levels vary.</summary>
    public Whose? Whose { get; }

    /// <summary>Whether the answer lies within the speeds tested.</summary>
    public bool WithinTested { get; }

    /// <summary>False when the question was declined or nothing satisfies it; <see cref="Statuses"/> says why.</summary>
    public bool HasAnswer { get; }

    /// <summary>What the reader should know of this answer.</summary>
    public ImmutableArray<Status> Statuses { get; }

    /// <summary>The same answer when all frames not judged are called rejects; null where all were judged.</summary>
    public Answer? AsRejects { get; internal init; }

    /// <summary>The answer as a person would say it.</summary>
    public abstract string Sentence { get; }

    /// <inheritdoc cref="Sentence" />
    public override string ToString() => Sentence;
}
