namespace Handhold;

/// <summary>How lucky a tested day was.</summary>
public sealed class DayLuck
{
    internal DayLuck(string? photographer, string? session, int frames, int keepers, Stops stops, CredibleInterval interval) =>
        (Photographer, Session, Frames, Keepers, Stops, Interval) = (photographer, session, frames, keepers, stops, interval);

    /// <summary>Who photographed; null when not recorded.</summary>
    public string? Photographer { get; }

    /// <summary>The day; null when not recorded.</summary>
    public string? Session { get; }

    /// <summary>Frames judged.</summary>
    public int Frames { get; }

    /// <summary>Keepers among them.</summary>
    public int Keepers { get; }

    /// <summary>Median of the day's luck: by how much slower than on a usual day one could go; negative on a bad day.</summary>
    public Stops Stops { get; }

    /// <summary>Interval of the luck, stops.</summary>
    public CredibleInterval Interval { get; }
}
