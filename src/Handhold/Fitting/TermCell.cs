namespace Handhold.Fitting;

/// <summary>Frames of one setting and exposure.</summary>
/// <param name="Setting">Index of the setting.</param>
/// <param name="Exposure">log2 seconds.</param>
/// <param name="Frames">Frames.</param>
/// <param name="Keepers">Keepers.</param>
internal readonly record struct TermCell(int Setting, double Exposure, int Frames, int Keepers);
