namespace Handhold;

/// <summary>Frames and keepers at one exposure.</summary>
public sealed class SpeedCount
{
    internal SpeedCount(ShutterSpeed exposure, int frames, int keepers) => (Exposure, Frames, Keepers) = (exposure, frames, keepers);

    /// <summary>The exposure.</summary>
    public ShutterSpeed Exposure { get; }

    /// <summary>Frames judged.</summary>
    public int Frames { get; }

    /// <summary>Keepers among them.</summary>
    public int Keepers { get; }
}
