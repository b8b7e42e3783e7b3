namespace Handhold.Photos;

/// <summary>A photograph that became a frame.</summary>
public sealed class Photo
{
    internal Photo(string path, DateTime? taken, ShotFrame frame) => (Path, Taken, Frame) = (path, taken, frame);

    /// <summary>The file, below the place that was named, with <c>/</c> between names and a question mark for what is no printable text.</summary>
    public string Path { get; }

    /// <summary>The camera's clock when the photograph was taken, in its own time zone, with parts of a second where recorded; null where not recorded.</summary>
    public DateTime? Taken { get; }

    /// <summary>The frame.</summary>
    public ShotFrame Frame { get; }

    /// <inheritdoc/>
    public override string ToString() => $"{Path}: {Frame.Exposure}, {Frame.Verdict}";

    internal Photo With(Conditions conditions) => new(Path, Taken, Frame with { Conditions = conditions });
}
