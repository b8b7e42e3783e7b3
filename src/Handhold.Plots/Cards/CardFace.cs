using System.Collections.Immutable;

namespace Handhold.Plots;

/// <summary>Everything on a card, in words and rates.</summary>
internal sealed record CardFace
{
    /// <summary>Rows that fit on a card and can be read at arm's length.</summary>
    private const int MostRows = 9;

    /// <summary>A speed within this of a tested one counts as tested, stops: marks are nominal.</summary>
    private const double Nominal = 0.1;

    /// <summary>The assurances that a card has a column for.</summary>
    public static ImmutableArray<double> Assurances { get; } = [0.9, 0.95, 0.99];

    /// <summary>Whose card it is.</summary>
    public required string Title { get; init; }

    /// <summary>The slowest speed to trust: the large words, and what they mean.</summary>
    public required (string Head, string Meaning) Trust { get; init; }

    /// <summary>Marked speeds, fastest first; at least one.</summary>
    public required ImmutableArray<CardRow> Rows { get; init; }

    /// <summary>When to use a support.</summary>
    public required string Support { get; init; }

    /// <summary>How to read the card, and what it rests on, a paragraph each.</summary>
    public required ImmutableArray<string> Notes { get; init; }

    /// <summary>Asks a curve for everything on its card.</summary>
    public static CardFace Of(KeeperCurve curve, FieldCardOptions options, CancellationToken cancellation)
    {
        var answers = options.Answers;
        var (fastest, slowest) = (curve.Data.Fastest.Log2Seconds - Nominal, curve.Data.Slowest.Log2Seconds + 1 + Nominal);
        // What takes too many frames takes more still with more assurance: that need not be asked.
        ImmutableArray<FramesNeededAnswer> FramesAt(ShutterSpeed speed)
        {
            List<FramesNeededAnswer> found = [];
            foreach (var assurance in Assurances)
            {
                found.Add(
                    found is [.., { Reachable: false } hopeless] ? hopeless : curve.FramesNeeded(speed, 1, assurance, answers, cancellation)
                );
            }

            return [.. found];
        }

        var asked = MarkedSpeeds
            .Series(Marks.Full)
            .Where(s => s.Log2Seconds >= fastest && s.Log2Seconds <= slowest)
            .TakeLast(MostRows)
            .Select(speed => (Speed: speed, curve.RateAt(speed, answers with { CheckPriors = false }).Rate, Frames: FramesAt(speed)))
            .ToImmutableArray();
        var slowestTrusted = curve.Slowest(options.Rate, options.Assurance, answers);
        return new CardFace
        {
            Title = curve.Key.Values.IsEmpty ? "Field card" : curve.Key.ToString(),
            Trust = CardWords.Trust(slowestTrusted, options),
            Rows = [.. asked.Select(a => new CardRow(a.Speed.ToString(), a.Rate, [.. a.Frames.Select(CardWords.Frames)]))],
            Support = CardWords.Support([.. asked.Select(a => a.Frames[1])], answers.Budget),
            Notes = CardWords.Notes(curve, options, [slowestTrusted, .. asked.SelectMany(a => a.Frames)]),
        };
    }
}
