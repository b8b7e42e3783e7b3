namespace Handhold.Simulation;

public sealed partial record World
{
    /// <summary>Chance that one frame on another day is a keeper, luck averaged out. Absolute error below 1e-10.</summary>
    /// <param name="at">The shutter speed.</param>
    public double RateAt(ShutterSpeed at) => ChanceOf(keepers: 1, frames: 1, at);

    /// <summary>Chance that frames shot on another day bring at least so many keepers. Absolute error below 1e-10.</summary>
    /// <param name="keepers">Keepers wanted, at least 0.</param>
    /// <param name="frames">Frames shot, at least 0.</param>
    /// <param name="at">The shutter speed.</param>
    /// <param name="burstsOf">Frames a burst, the last burst possibly short; null: all frames in one burst.</param>
    /// <exception cref="ArgumentOutOfRangeException">A count is negative, or a burst has no frame.</exception>
    public double ChanceOf(int keepers, int frames, ShutterSpeed at, int? burstsOf = null)
    {
        ArgumentOutOfRangeException.ThrowIfNegative(keepers);
        ArgumentOutOfRangeException.ThrowIfNegative(frames);
        if (burstsOf is { } size)
        {
            ArgumentOutOfRangeException.ThrowIfNegativeOrZero(size, nameof(burstsOf));
        }
        return new ShootChance(luck => Frame(at.Log2Seconds, luck), SessionLuck, BurstLuck, 1 / Steepness).Of(keepers, frames, burstsOf);
    }
}
