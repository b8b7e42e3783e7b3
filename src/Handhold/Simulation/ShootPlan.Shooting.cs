using System.Globalization;
using Handhold.Randomness;

namespace Handhold.Simulation;

public sealed partial record ShootPlan
{
    /// <summary>Whether one frame is called a keeper: its exposure, its burst's grip, and chance.</summary>
    internal delegate bool Judge(ShutterSpeed speed, double grip, RandomStream stream);

    /// <summary>The frames of one day, one row each; a grip is drawn for every burst, or for every frame where bursts are not named.</summary>
    internal FrameTable Day(string session, Func<RandomStream, double> grip, Judge called, RandomStream stream)
    {
        List<FrameCell> frames = [];
        var burst = 0;
        foreach (var speed in Speeds)
        {
            for (var b = 0; b < Bursts; b++)
            {
                burst++;
                var held = grip(stream);
                for (var position = 1; position <= BurstOf; position++)
                {
                    if (position > 1 && !NameBursts)
                    {
                        held = grip(stream);
                    }
                    frames.Add(
                        new(speed, frames: 1, keepers: called(speed, held, stream) ? 1 : 0)
                        {
                            Conditions = Conditions with
                            {
                                Session = session,
                                Burst = NameBursts ? burst.ToString(CultureInfo.InvariantCulture) : null,
                                BurstPosition = NameBursts ? position : null,
                            },
                        }
                    );
                }
            }
        }
        return [.. frames];
    }
}
