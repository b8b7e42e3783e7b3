using System.Collections.Immutable;

namespace Handhold;

/// <summary>Frames needed at a known keeper rate.</summary>
public sealed class KnownRateAnswer
{
    internal KnownRateAnswer(int? frames, ImmutableArray<int> bursts, double assurance, ImmutableArray<Status> statuses, string sentence) =>
        (Frames, Bursts, Assurance, Statuses, Sentence) = (frames, bursts, assurance, statuses, sentence);

    /// <summary>Smallest number of frames; null when over the budget.</summary>
    public int? Frames { get; }

    /// <summary>Frames in each burst.</summary>
    public ImmutableArray<int> Bursts { get; }

    /// <summary>Assurance attained with these frames, or with the whole budget.</summary>
    public double Assurance { get; }

    /// <summary>What the reader should know.</summary>
    public ImmutableArray<Status> Statuses { get; }

    /// <summary>The answer as a person would say it.</summary>
    public string Sentence { get; }

    /// <inheritdoc cref="Sentence" />
    public override string ToString() => Sentence;
}
