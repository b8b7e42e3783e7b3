namespace Handhold.Plots;

/// <summary>Frames needed at a speed.</summary>
internal sealed record FramesPoint(double Log2Seconds, int Frames, bool RestsOnPrior);
