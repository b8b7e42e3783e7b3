using System.Globalization;

namespace Handhold;

/// <summary>Frames of equal conditions: how many were shot and judged, how many were keepers.</summary>
public sealed record FrameCell
{
    /// <summary>Judged frames at one speed.</summary>
    /// <param name="exposure">The shutter speed.</param>
    /// <param name="frames">Frames judged, at least 1 unless some were not judged.</param>
    /// <param name="keepers">Keepers among them, 0 to <paramref name="frames"/>.</param>
    /// <exception cref="CellException">The exposure was never set, or the counts are impossible.</exception>
    public FrameCell(ShutterSpeed exposure, int frames, int keepers)
    {
        if (exposure == default)
            throw new CellException("A cell", "its exposure was never set.", "Give it a speed, such as ShutterSpeed.OneOver(60).");
        (Exposure, Frames, Keepers) = (exposure, NotNegative(frames, "frames", exposure), NotNegative(keepers, "keepers", exposure));
        if (keepers > frames)
            throw new CellException(
                Place(exposure),
                string.Create(CultureInfo.InvariantCulture, $"{keepers} keepers in {frames} frames is impossible."),
                "Count each frame once, and give the frames first, then the keepers among them."
            );
    }

    /// <summary>The shutter speed.</summary>
    public ShutterSpeed Exposure { get; }

    /// <summary>Frames judged.</summary>
    public int Frames { get; }

    /// <summary>Keepers among the frames judged.</summary>
    public int Keepers { get; }

    /// <summary>Frames shot but not judged; they are counted, reported and not used.</summary>
    /// <exception cref="CellException">The count is negative.</exception>
    public int Unjudged
    {
        get;
        init => field = NotNegative(value, "frames not judged", Exposure);
    }

    /// <summary>Frames among those judged that were judged a second time.</summary>
    /// <exception cref="CellException">The counts contradict the keepers and rejects.</exception>
    public SecondLooks SecondLooks
    {
        get;
        init =>
            field =
                value is { KeptTwice: >= 0, KeptOnce: >= 0, KeptNever: >= 0 }
                && value.KeptTwice <= Keepers
                && value.KeptNever <= Frames - Keepers
                && (long)value.KeptTwice + value.KeptOnce + value.KeptNever <= Frames
                    ? value
                    : throw new CellException(
                        Place(Exposure),
                        string.Create(
                            CultureInfo.InvariantCulture,
                            $"of {Frames} frames with {Keepers} keepers {value.KeptTwice} cannot be kept twice, {value.KeptOnce} once and {value.KeptNever} never."
                        ),
                        "Count only frames that were judged a second time, each once."
                    );
    }

    /// <summary>Frames not judged whose speed and conditions are not known any more.</summary>
    internal int Elsewhere { get; init; }

    /// <summary>The frames judged and nothing else, under these conditions.</summary>
    internal FrameCell Judged(Conditions conditions) =>
        ReferenceEquals(conditions, Conditions)
        && (Unjudged, Elsewhere, Rows, InOrder, Survivors, SecondLooks) == (0, 0, 1, false, (0, 0), default)
            ? this
            : new(Exposure, Frames, Keepers) { Conditions = conditions };

    /// <summary>The cell with every frame not judged called a reject.</summary>
    internal FrameCell AsRejects() =>
        Unjudged == 0
            ? this
            : new(Exposure, Frames + Unjudged, Keepers)
            {
                Conditions = Conditions,
                Rows = Rows,
                Elsewhere = Elsewhere,
                InOrder = InOrder,
                Survivors = Survivors,
            };

    /// <summary>Rows of a table that the cell stands for.</summary>
    internal int Rows { get; init; } = 1;

    /// <summary>Whether a saved fit said that speeds and order of shooting go together; the order itself is not saved.</summary>
    internal bool InOrder { get; init; }

    /// <summary>What a saved fit said of deleted frames; the column that tells is not saved.</summary>
    internal (int Judged, int Deleted) Survivors { get; init; }

    /// <summary>Under what conditions.</summary>
    public Conditions Conditions { get; init; } = Conditions.None;

    /// <summary>The counts as people say them: <c>5 keepers of 6 frames at 1/30 s</c>.</summary>
    public override string ToString() =>
        string.Create(CultureInfo.InvariantCulture, $"{Keepers} keepers of {Frames} frames at {Exposure}")
        + (Unjudged == 0 ? "" : string.Create(CultureInfo.InvariantCulture, $", {Unjudged} not judged"));

    private static string Place(ShutterSpeed exposure) => $"The cell at {exposure}";

    private static int NotNegative(int count, string what, ShutterSpeed exposure) =>
        count >= 0
            ? count
            : throw new CellException(
                Place(exposure),
                string.Create(CultureInfo.InvariantCulture, $"{count} {what} is below 0."),
                "Give a count from 0 up."
            );
}
