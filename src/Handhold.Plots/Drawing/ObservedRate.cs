namespace Handhold.Plots;

/// <summary>The count at one speed and the interval of its rate.</summary>
internal sealed record ObservedRate(double Log2Seconds, int Keepers, int Frames, double Lower, double Upper)
{
    public double Rate => (double)Keepers / Frames;
}
