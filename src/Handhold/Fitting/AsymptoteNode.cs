namespace Handhold.Fitting;

/// <summary>A ceiling and a floor, with the log of their joint weight (prior, step and evidence of all curves).</summary>
internal readonly record struct AsymptoteNode(int CeilingNode, int FloorNode, double Ceiling, double Floor, double LogWeight);
