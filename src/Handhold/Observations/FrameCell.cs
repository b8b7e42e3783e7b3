namespace Handhold;

/// <summary>Frames of equal conditions: how many were shot and judged, how many were keepers.</summary>
public sealed record FrameCell
{
    /// <summary>Judged frames at one speed.</summary>
    /// <param name="exposure">The shutter speed.</param>
    /// <param name="frames">Frames judged, at least 1 unless some were not judged.</param>
    /// <param name="keepers">Keepers among them, 0 to <paramref name="frames"/>.</param>
    /// <exception cref="CellException">The counts are impossible.</exception>
    public FrameCell(ShutterSpeed exposure, int frames, int keepers) => (Exposure, Frames, Keepers) = (exposure, frames, keepers);

    /// <summary>The shutter speed.</summary>
    public ShutterSpeed Exposure { get; }

    /// <summary>Frames judged.</summary>
    public int Frames { get; }

    /// <summary>Keepers among the frames judged.</summary>
    public int Keepers { get; }

    /// <summary>Frames shot but not judged; they are counted, reported and not used.</summary>
    public int Unjudged { get; init; }

    /// <summary>Under what conditions.</summary>
    public Conditions Conditions { get; init; } = Conditions.None;
}
