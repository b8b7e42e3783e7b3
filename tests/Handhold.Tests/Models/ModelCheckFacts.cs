using static Handhold.ShutterSpeed;

namespace Handhold.Tests.Models;

public class ModelCheckFacts
{
    private static FrameTable Table { get; } = [new(OneOver(60), 6, 5), new(OneOver(30), 6, 3), new(OneOver(15), 6, 1)];

    public static TheoryData<string, KeeperModel> Contradictions { get; } =
        new()
        {
            {
                "Estimator.Likelihood",
                new() { Link = Link.Probit }
            },
            {
                "Estimator.Posterior",
                new() { Estimator = Estimator.BiasReduced, Luck = LuckKind.Normal }
            },
            {
                "Estimator.Likelihood",
                new() { Luck = LuckKind.BetaBinomial }
            },
            {
                "fix it",
                new()
                {
                    Estimator = Estimator.Likelihood,
                    Luck = LuckKind.Normal,
                    Ceiling = Ceiling.Estimated,
                }
            },
            {
                "1 to 200",
                new() { Estimator = Estimator.Likelihood, Nodes = 0 }
            },
            {
                "Leave them out",
                new() { Nodes = 9 }
            },
            {
                "Estimator.Likelihood",
                new() { Estimator = Estimator.BiasReduced, Ceiling = Ceiling.Estimated }
            },
            {
                "Estimator.Likelihood",
                new() { Estimator = Estimator.BiasReduced, Floor = Floor.Estimated }
            },
            {
                "twice",
                new() { Estimator = Estimator.Likelihood, Terms = ["a", "a"] }
            },
            {
                "already",
                new() { Estimator = Estimator.Likelihood, Terms = ["exposure"] }
            },
            {
                "Choose one",
                new()
                {
                    Estimator = Estimator.Likelihood,
                    Terms = ["setup"],
                    Each = ["setup"],
                }
            },
            {
                "Choose one",
                new()
                {
                    Estimator = Estimator.Likelihood,
                    Terms = ["a"],
                    PoolConditions = true,
                }
            },
            {
                "needs the term b",
                new()
                {
                    Estimator = Estimator.Likelihood,
                    Terms = ["a"],
                    Products = [new("a", "b")],
                }
            },
            {
                "Name two",
                new()
                {
                    Estimator = Estimator.Likelihood,
                    Terms = ["a"],
                    Products = [new("a", "a")],
                }
            },
        };

    [Theory]
    [MemberData(nameof(Contradictions))]
    public void A_contradiction_is_refused_with_the_way_out(string remedy, KeeperModel model) =>
        Assert.Contains(remedy, Assert.ThrowsAny<ArgumentException>(() => model.Fit(Table)).Message, StringComparison.Ordinal);

    [Fact]
    public void Ceiling_and_luck_follow_the_estimator_unless_they_are_given()
    {
        KeeperModel posterior = new();
        Assert.Equal((Ceiling.Estimated, LuckKind.Normal), (posterior.Ceiling, posterior.Luck));
        var likelihood = posterior with { Estimator = Estimator.Likelihood };
        Assert.Equal((Ceiling.One, LuckKind.None), (likelihood.Ceiling, likelihood.Luck));
        var given = likelihood with { Ceiling = Ceiling.Fixed(0.97) };
        Assert.Equal(0.97, (given with { Estimator = Estimator.Posterior }).Ceiling.Value);
    }

    [Fact]
    public void A_fixed_ceiling_moves_the_half_keeper_exposure_as_the_formula_says()
    {
        var model = KeeperModel.Default with { Estimator = Estimator.Likelihood, Ceiling = Ceiling.Fixed(0.95) };
        var curve = model.Fit(Table).Only;
        var (a, b) = (curve.Linear!.Coefficients[0].Estimate!.Value, curve.Linear.Coefficients[1].Estimate!.Value);
        var expected = (Math.Log(0.5 / 0.45) - a) / b;
        Assert.Equal(expected, curve.HalfKeeperExposure().Exposure!.Value.Log2Seconds, 1e-10);
        var unreachable = curve.ExposureFor(0.96);
        Assert.Equal((false, ExposureSetKind.NotReachable), (unreachable.HasAnswer, unreachable.Set.Kind));
        Assert.Contains(unreachable.Statuses, s => s.Code == StatusCode.NotReachable);
    }

    [Fact]
    public void Two_sides_of_different_estimators_are_not_compared()
    {
        var likelihood = (KeeperModel.Default with { Estimator = Estimator.Likelihood }).Fit(Table).Only;
        var reduced = (KeeperModel.Default with { Estimator = Estimator.BiasReduced }).Fit(Table).Only;
        Assert.Contains(
            "one estimator",
            Assert.Throws<ArgumentException>(() => likelihood.SlowerThan(reduced, 0.5)).Message,
            StringComparison.Ordinal
        );
    }

    [Fact]
    public void Likelihood_ratios_are_refused_where_they_mean_nothing()
    {
        var likelihood = KeeperModel.Default with { Estimator = Estimator.Likelihood };
        FrameTable sides =
        [
            .. Table.Select(c => c with { Conditions = Conditions.None.With("grip", "a") }),
            .. Table.Select(c => c with { Conditions = Conditions.None.With("grip", "b") }),
        ];
        var larger = (likelihood with { Terms = ["grip"] }).Fit(sides).Only;
        var smaller = likelihood.Fit(sides).Only;
        Assert.Equal(0, LikelihoodRatio.Of(larger, smaller).Statistic, 1e-9);
        Refused("other on", larger, likelihood.Fit(Table).Only);
        Refused("links", larger, (likelihood with { Link = Link.Probit }).Fit(sides).Only);
        Refused("ceilings", larger, (likelihood with { Ceiling = Ceiling.Fixed(0.97) }).Fit(sides).Only);
        Refused("bias-reduced", larger, (KeeperModel.Default with { Estimator = Estimator.BiasReduced }).Fit(sides).Only);
        Refused("same columns", smaller, smaller);
        Refused("the larger has not", smaller, larger);
        FrameTable moved =
        [
            .. sides.Select((c, i) => i == 0 ? new FrameCell(OneOver(59), c.Frames, c.Keepers) { Conditions = c.Conditions } : c),
        ];
        Refused("from speed to speed", larger, likelihood.Fit(moved).Only);

        static void Refused(string why, KeeperCurve larger, KeeperCurve smaller) =>
            Assert.Contains(
                why,
                Assert.Throws<ArgumentException>(() => LikelihoodRatio.Of(larger, smaller)).Message,
                StringComparison.Ordinal
            );
    }

    [Theory]
    [InlineData(3.841458820694124, 1, 0.05)]
    [InlineData(5.991464547107979, 2, 0.05)]
    [InlineData(7.814727903251178, 3, 0.05)]
    [InlineData(18.307038053275146, 10, 0.05)]
    public void Chi_square_tails_are_those_of_the_tables(double x, int degrees, double tail) =>
        Assert.Equal(tail, global::Handhold.Kernels.ChiSquare.Above(x, degrees), 1e-12);
}
