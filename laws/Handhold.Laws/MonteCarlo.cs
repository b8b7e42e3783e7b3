namespace Handhold.Laws;

/// <summary>How well a share is known that was counted in so many trials.</summary>
internal static class MonteCarlo
{
    /// <summary>Its standard error.</summary>
    internal static double Error(double share, int trials) => Math.Sqrt(share * (1 - share) / trials);
}
