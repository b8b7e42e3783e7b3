using System.Collections.Immutable;
using Handhold.Curves;

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
            .. Neighbours.Joined(
                cells.Select(c => new SpeedCount(c.Exposure, c.Frames, c.Keepers)).OrderBy(s => s.Exposure.Seconds),
                (a, b) => a.Exposure == b.Exposure ? new(a.Exposure, a.Frames + b.Frames, a.Keepers + b.Keepers) : null
            ),
        ];
}
