using System.Collections.Immutable;
using Handhold.Prediction;

namespace Handhold;

/// <summary>The slowest marked speed that can be trusted.</summary>
public sealed class SlowestAnswer : Answer
{
    internal SlowestAnswer(
        Question question,
        string wanted,
        ShutterSpeed? shutter,
        double? assurance,
        bool withinTested,
        ImmutableArray<Status> statuses
    )
        : base(question, withinTested, shutter is not null, statuses) => (Wanted, Shutter, Assurance) = (wanted, shutter, assurance);

    /// <summary>What was asked, in words.</summary>
    public string Wanted { get; }

    /// <summary>The marked speed; null when none will do.</summary>
    public ShutterSpeed? Shutter { get; }

    /// <summary>The assurance attained there.</summary>
    public double? Assurance { get; }

    /// <inheritdoc />
    public override string Sentence =>
        Shutter is { } shutter && Assurance is { } assurance
            ? $"{shutter} is the slowest marked speed that gives {Wanted} with the wanted {(Curve.Linear is null ? "assurance" : "confidence")} ({Say.Percent(assurance)} there)."
            : Statuses[0].Message;
}
