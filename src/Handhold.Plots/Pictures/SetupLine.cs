namespace Handhold.Plots;

/// <summary>One of several curves.</summary>
internal sealed record SetupLine(string Name, CurveScene Scene);
