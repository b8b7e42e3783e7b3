namespace Handhold.Photos;

/// <summary>Frames whose file numbers are missing, probably deleted: how many, and the photograph before them.</summary>
internal sealed record MissingFrames(Photo Before, int Count);
