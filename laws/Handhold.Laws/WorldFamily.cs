using System.Collections.Immutable;
using Handhold.Kernels;
using Handhold.Randomness;
using Handhold.Simulation;

namespace Handhold.Laws;

/// <summary>Where worlds come from: the priors, or somewhere the library does not expect.</summary>
/// <param name="Name">In words.</param>
/// <param name="Draw">One world.</param>
internal sealed record WorldFamily(string Name, Func<RandomStream, Truth> Draw)
{
    private const double Correlation = 0.2;
    private const double Misjudged = 0.05;
    private const int Looks = 4000; // frames by which the chances of hands in motion are counted

    internal static readonly WorldFamily Priors = new("drawn from the priors", stream => Of(Drawn(stream)));

    internal static readonly WorldFamily Steep = new("steepness 3.2 logits a stop", stream => Of(Drawn(stream) with { Steepness = 3.2 }));

    internal static readonly WorldFamily Correlated = new(
        "frames of a burst correlated by 0.2 at every speed, days alike",
        stream => SharingRates(Drawn(stream) with { SessionLuck = 0, BurstLuck = 0 })
    );

    internal static readonly WorldFamily Misjudging = new(
        "one verdict in twenty wrong, unknown to the analyst",
        stream =>
        {
            var truth = Of(Drawn(stream));
            return truth with { Shoot = (plan, s) => [.. truth.Shoot(plan, s).Select(row => s.Happens(Misjudged) ? Turned(row) : row)] };
        }
    );

    internal static readonly WorldFamily Motion = new("hands in motion, no curve at all", stream => Of(Hands(stream), stream));

    internal static readonly ImmutableArray<WorldFamily> All = [Priors, Steep, Correlated, Misjudging, Motion];

    private static World Drawn(RandomStream stream) => World.Draw(KeeperModel.Default, TestDesign.HalfPoint, stream);

    private static Truth Of(World world) =>
        new(world.Shoot, at => (keepers, frames, burstsOf) => world.ChanceOf(keepers, frames, at, burstsOf));

    /// <summary>A burst's keeper rate is drawn from a beta distribution whose mean is the world's rate at the speed.</summary>
    private static Truth SharingRates(World world)
    {
        return new(
            (plan, stream) => plan.Day("1", s => s.Uniform(), (speed, level, s) => s.Happens(Rate(speed, level)), stream),
            at =>
                (keepers, frames, burstsOf) =>
                    burstsOf is not null ? throw new NotSupportedException("Several bursts of a constant correlation are not planned here.")
                    : keepers > frames ? 0
                    : BetaBinomial.Tails(keepers, frames, Shapes(at).A, Shapes(at).B).AtLeast
        );

        (double A, double B) Shapes(ShutterSpeed at)
        {
            var (keeper, reject) = world.Frame(at.Log2Seconds, 0);
            return BetaBinomial.Shapes(keeper, reject, Correlation);
        }

        double Rate(ShutterSpeed at, double level)
        {
            var (a, b) = Shapes(at);
            return MathNet.Numerics.Distributions.Beta.InvCDF(a, b, level);
        }
    }

    private static FrameCell Turned(FrameCell row) =>
        new(row.Exposure, row.Frames, row.Frames - row.Keepers) { Conditions = row.Conditions };

    /// <summary>Sizes of motion with a spread of about a stop, and luck as usual; the setting is judgement.</summary>
    private static ShakyHands Hands(RandomStream stream)
    {
        var priors = KeeperModel.Default.Priors;
        return new()
        {
            Drift = 0.7 * Math.Pow(2, stream.Normal()),
            Tremor = 0.7 * Math.Pow(2, stream.Normal()),
            TremorFrequency = 6 + 6 * stream.Uniform(),
            FocusMisses = stream.Beta(priors.CeilingLoss.A, priors.CeilingLoss.B),
            SubjectMoves = 0.2 * stream.Uniform(),
            SubjectSpeed = Math.Pow(2, stream.Normal()),
            SessionLuck = priors.SessionLuck.Scale * Math.Abs(stream.Normal()),
            BurstLuck = priors.BurstLuck.Scale * Math.Abs(stream.Normal()),
        };
    }

    private static Truth Of(ShakyHands hands, RandomStream stream) =>
        new(
            hands.Shoot,
            at =>
            {
                var shooting = hands.Shooting(at, Looks, stream);
                return (keepers, frames, burstsOf) => shooting.Of(keepers, frames, burstsOf);
            }
        );
}
