namespace Handhold.Laws;

/// <summary>A plan and the chance with which the world keeps it.</summary>
/// <param name="Plan">The plan.</param>
/// <param name="Kept">Exact chance of the wanted keepers from the planned frames; 0 when declined.</param>
/// <param name="PlugInKept">The same for the plug-in frames, where both plans exist.</param>
/// <param name="TrueRate">The world's keeper rate at the plan's speed on another day; null where there is no speed.</param>
/// <param name="RestedOnPrior">Whether a plan that is kept too seldom at a slow speed was said to rest on the prior.</param>
internal readonly record struct Outcome(Plan Plan, double Kept, double? PlugInKept, double? TrueRate = null, bool RestedOnPrior = false);
