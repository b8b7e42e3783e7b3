namespace Handhold.Photos;

/// <summary>How far an import is.</summary>
/// <param name="Read">Photographs read so far.</param>
/// <param name="Found">Photographs found in all.</param>
public readonly record struct PhotoProgress(int Read, int Found);
