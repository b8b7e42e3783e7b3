using System.Globalization;
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
        List<FrameCell> frames = [];
        var burst = 0;
        foreach (var speed in plan.Speeds)
        {
            for (var b = 0; b < plan.Bursts; b++)
            {
                burst++;
                var grip = BurstLuck * stream.Normal();
                for (var position = 1; position <= plan.BurstOf; position++)
                {
                    if (position > 1 && !plan.NameBursts)
                    {
                        grip = BurstLuck * stream.Normal();
                    }
                    var keeper = stream.Happens(Frame(speed.Log2Seconds, dayLuck + grip).Keeper);
                    frames.Add(
                        new(speed, frames: 1, keepers: keeper ? 1 : 0)
                        {
                            Conditions = plan.Conditions with
                            {
                                Session = session,
                                Burst = plan.NameBursts ? burst.ToString(CultureInfo.InvariantCulture) : null,
                                BurstPosition = plan.NameBursts ? position : null,
                            },
                        }
                    );
                }
            }
        }
        return [.. frames];
    }
}
