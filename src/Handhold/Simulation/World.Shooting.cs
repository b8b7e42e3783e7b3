using Handhold.Randomness;

namespace Handhold.Simulation;

public sealed partial record World
{
    /// <summary>Shoots and judges a plan: one row a frame.</summary>
    /// <param name="plan">What to shoot.</param>
    /// <param name="stream">Chance.</param>
    public FrameTable Shoot(ShootPlan plan, RandomStream stream)
    {
        ArgumentNullException.ThrowIfNull(plan);
        ArgumentNullException.ThrowIfNull(stream);
        return [.. plan.Sessions.SelectMany(session => ShootDay(plan, session, SessionLuck * stream.Normal(), stream))];
    }

    /// <summary>Shoots and judges one day of a plan, on a day of known luck.</summary>
    /// <param name="plan">What to shoot; its list of sessions is not used.</param>
    /// <param name="session">The day's label.</param>
    /// <param name="dayLuck">The day's shift, stops; positive lets slower frames succeed.</param>
    /// <param name="stream">Chance of bursts and frames.</param>
    public FrameTable ShootDay(ShootPlan plan, string session, double dayLuck, RandomStream stream)
    {
        ArgumentNullException.ThrowIfNull(plan);
        ArgumentNullException.ThrowIfNull(stream);
        return plan.Day(
            session,
            s => BurstLuck * s.Normal(),
            (speed, grip, s) => s.Happens(Frame(speed.Log2Seconds, dayLuck + grip).Keeper),
            stream
        );
    }
}
