using System.Collections.Immutable;

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

    /// <summary>Cells by their exposure, fastest first.</summary>
    internal static ImmutableArray<SpeedCount> Of(IEnumerable<FrameCell> cells) =>
        [
            .. cells
                .GroupBy(c => c.Exposure)
                .OrderBy(g => g.Key.Seconds)
                .Select(g => new SpeedCount(g.Key, g.Sum(c => c.Frames), g.Sum(c => c.Keepers))),
        ];
}
