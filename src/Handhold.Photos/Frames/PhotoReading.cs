namespace Handhold.Photos;

/// <summary>What one file gave: a photograph, or the reason why not, and remarks.</summary>
/// <param name="Photo">The photograph; null where the file gives no frame.</param>
/// <param name="Refused">Why it gives none.</param>
/// <param name="Remarks">What deserves a look.</param>
internal sealed record PhotoReading(Photo? Photo, PhotoReason? Refused, PhotoReason[] Remarks);
