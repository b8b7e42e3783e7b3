using System.Collections.Immutable;

namespace Handhold;

/// <summary>What a term costs or buys: the change of the exposure for any rate, in stops.</summary>
public sealed class TermInStops
{
    internal TermInStops(
        string term,
        ImmutableArray<KeyValuePair<string, double>> at,
        Stops? stops,
        double? lower,
        double? upper,
        ImmutableArray<string> words
    ) => (Term, At, Stops, Lower, Upper, Words) = (term, at, stops, lower, upper, words);

    /// <summary>In words: what changes, then where all else stands, such as "Stabiliser lens instead of off, 4 rated stops" and "at life size".</summary>
    public ImmutableArray<string> Words { get; }

    /// <summary>The column: one unit of a number, or a level against the reference, such as <c>sex=M</c>.</summary>
    public string Term { get; }

    /// <summary>Where the other columns stand on which it depends; empty when on none.</summary>
    public ImmutableArray<KeyValuePair<string, double>> At { get; }

    /// <summary>The change: positive where slower speeds are allowed. Null where the data leave it open.</summary>
    public Stops? Stops { get; }

    /// <summary>Lower end of the interval, stops: profile, or of a level Fieller's; null is unbounded.</summary>
    public double? Lower { get; }

    /// <summary>Upper end of the interval, stops; null is unbounded.</summary>
    public double? Upper { get; }
}
