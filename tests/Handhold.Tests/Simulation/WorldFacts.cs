using Handhold.Randomness;
using Handhold.Simulation;
using static Handhold.ShutterSpeed;

namespace Handhold.Tests;

public class WorldFacts
{
    private static readonly World Usual = new()
    {
        HalfPoint = -5,
        Steepness = 1.6,
        Ceiling = 0.97,
        SessionLuck = 0.3,
        BurstLuck = 0.2,
    };

    [Fact]
    public void Without_luck_the_chance_of_keepers_is_binomial()
    {
        var world = Usual with { SessionLuck = 0, BurstLuck = 0 };
        var p = 0.97 / (1 + Math.Pow(Math.E, 1.6 * (5 - Math.Log2(15))));
        Assert.Equal(p, world.RateAt(OneOver(15)), 1e-12);
        Assert.Equal(1 - Math.Pow(1 - p, 9), world.ChanceOf(1, 9, OneOver(15)), 1e-12);
        var fewerThanTwo = Math.Pow(1 - p, 9) + 9 * p * Math.Pow(1 - p, 8);
        Assert.Equal(1 - fewerThanTwo, world.ChanceOf(2, 9, OneOver(15), burstsOf: 4), 1e-12);
    }

    // Sums of a million points replace every integral, and the bursts are written out one by one.
    [Theory]
    [InlineData(1.6, 0.3, 0.2)]
    [InlineData(5.5, 1.2, 0.9)]
    [InlineData(0.6, 0.05, 0.0)]
    public void Another_day_agrees_with_brute_force(double steepness, double session, double burst)
    {
        var world = Usual with { Steepness = steepness, SessionLuck = session, BurstLuck = burst };
        var at = OneOver(20);
        var none = (double spread, double x, int n) => Mean(spread, z => Math.Pow(1 - Rate(world, x + z), n), 1000);
        var one = (double spread, double x, int n) =>
            Mean(spread, z => n * Rate(world, x + z) * Math.Pow(1 - Rate(world, x + z), n - 1), 1000);
        var x = -at.Log2Seconds;

        Assert.Equal(Mean(double.Hypot(session, burst), z => Rate(world, x + z), 20_000), world.RateAt(at), 1e-9);
        var all = Mean(double.Hypot(session, burst), z => Math.Pow(1 - Rate(world, x + z), 40), 20_000);
        Assert.Equal(1 - all, world.ChanceOf(1, 40, at), 1e-9);
        var fewerThanTwo = Mean(
            session,
            day =>
                none(burst, x + day, 3) * none(burst, x + day, 2)
                + one(burst, x + day, 3) * none(burst, x + day, 2)
                + none(burst, x + day, 3) * one(burst, x + day, 2),
            1000
        );
        Assert.Equal(1 - fewerThanTwo, world.ChanceOf(2, 5, at, burstsOf: 3), 1e-9);

        static double Rate(World world, double shift) => world.Ceiling / (1 + Math.Exp(-world.Steepness * (world.HalfPoint + shift)));
        static double Mean(double spread, Func<double, double> f, int points)
        {
            var (sum, weight) = (0.0, 0.0);
            for (var i = 0; i <= points; i++)
            {
                var z = -8.5 + 17.0 * i / points;
                var w = Math.Exp(-z * z / 2);
                (sum, weight) = (sum + w * f(spread * z), weight + w);
            }
            return sum / weight;
        }
    }

    [Fact]
    public void The_simulated_share_of_keepers_is_the_rate_of_another_day()
    {
        ShootPlan plan = new()
        {
            Speeds = [OneOver(30)],
            Bursts = 1,
            BurstOf = 4,
        };
        const int Days = 20_000;
        var atLeastTwo = 0;
        for (var day = 0; day < Days; day++)
        {
            atLeastTwo += Usual.Shoot(plan, Seed.From(1).Stream(day)).Keepers >= 2 ? 1 : 0;
        }
        var chance = Usual.ChanceOf(2, 4, OneOver(30));
        var error = 4 * Math.Sqrt(chance * (1 - chance) / Days);
        Assert.InRange((double)atLeastTwo / Days, chance - error, chance + error);
    }

    [Fact]
    public void A_plan_is_shot_as_it_is_written()
    {
        ShootPlan plan = new()
        {
            Speeds = [OneOver(60), OneOver(30)],
            Bursts = 2,
            BurstOf = 3,
            Sessions = ["a", "b"],
            Conditions = Conditions.None with { Setup = "dial" },
        };
        var table = Usual.Shoot(plan, Seed.From(1).Stream(0));
        Assert.Equal(24, table.Count);
        Assert.All(table, row => Assert.Equal((1, "dial"), (row.Frames, row.Conditions.Setup)));
        Assert.Equal(8, table.GroupBy(row => (row.Exposure, row.Conditions.Session, row.Conditions.Burst)).Count(b => b.Count() == 3));
        Assert.All(Usual.Shoot(plan with { NameBursts = false }, Seed.From(1).Stream(0)), row => Assert.Null(row.Conditions.Burst));
    }

    [Fact]
    public void A_drawn_world_keeps_what_the_model_fixes()
    {
        var model = KeeperModel.Default with { Ceiling = Ceiling.Fixed(0.9), Luck = LuckKind.None };
        var world = World.Draw(model, new NormalPrior(-6, 3), Seed.From(1).Stream(0));
        Assert.Equal((0.9, 0, 0, 0), (world.Ceiling, world.Floor, world.SessionLuck, world.BurstLuck));
    }
}
