namespace Handhold.Laws;

/// <summary>A plan and the chance with which the world keeps it.</summary>
/// <param name="Plan">The plan.</param>
/// <param name="Kept">Exact chance of the wanted keepers from the planned frames; 0 when declined.</param>
/// <param name="PlugInKept">The same for the plug-in frames, where both plans exist.</param>
internal readonly record struct Outcome(Plan Plan, double Kept, double? PlugInKept);
