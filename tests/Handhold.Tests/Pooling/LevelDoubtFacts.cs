using Handhold.Curves;

namespace Handhold.Tests.Pooling;

/// <summary>What is said of levels that the points of a posterior stand badly for.</summary>
public class LevelDoubtFacts
{
    private static Lazy<KeeperCurve> Fitted { get; } =
        new(() =>
            (KeeperModel.Default with { Luck = LuckKind.None, Each = [], Varies = [new("photographer", VaryingPart.Both), Groups.Nested] })
                .Fit([
                    .. from level in Enumerable.Range(0, 4)
                    from speed in new[] { 125, 60, 30, 15 }
                    select new FrameCell(ShutterSpeed.OneOver(speed), 4, Math.Min(4, speed / (20 + 10 * (level / 2))))
                    {
                        Conditions = new() { Photographer = $"p{level / 2}", Setup = $"s{level % 2}" },
                    },
                ])
                .Only
        );

    /// <summary>Where the change of the log density is a line in a number, its covariance with the number is slope times variance.</summary>
    [Theory]
    [InlineData(0.3)]
    [InlineData(-0.02)]
    public void A_number_moves_by_its_sd_times_the_slope_of_the_density_change(double slope)
    {
        double[] values = [1, 2, 3, 4, 1000];
        NodeChange nodes = new(4, () => [.. values.Take(4).Select(v => 7 + slope * v)]);
        Assert.Equal(slope * Math.Sqrt(1.109375), nodes.Of(values, [1, 1, 2, 4, 1]).Value, 1e-14); // weights 1, 1, 2, 4 of 1, 2, 3, 4
    }

    [Fact]
    public void A_number_that_is_known_moves_by_nothing() =>
        Assert.Equal(0, new NodeChange(2, () => [0.1, 0.2]).Of([5, 5], [0.5, 0.5]).Value);

    [Fact]
    public void Every_number_says_how_it_moves_with_more_nodes_and_every_level_how_its_points_stand()
    {
        var curve = Fitted.Value;
        Assert.All(curve.Parameters.Concat(curve.Levels.SelectMany(g => g.Spreads)), Steady);
        Assert.All(
            curve.Levels.SelectMany(g => g.Levels),
            level =>
            {
                Assert.All(level.Effects, Steady);
                Assert.InRange(level.Sampling.ParetoK, double.NegativeInfinity, 0.7);
                Assert.InRange(level.Sampling.EffectiveSize, 400, level.Sampling.Points);
                Assert.Empty(level.Statuses);
            }
        );

        static void Steady(ParameterSummary number) => Assert.InRange(number.NodeChange!.Value, -0.05, 0.05);
    }

    [Fact]
    public void Levels_that_rest_on_few_points_are_told_and_so_are_answers_for_them()
    {
        var curve = WithFewPointsFor(Fitted.Value, level: 1);
        var setups = curve.Levels.Single(g => g.Varying.Column == "setup").Levels;
        Assert.Equal([1], setups.Index().Where(l => l.Item.Statuses.Any(s => s.Code == StatusCode.Approximate)).Select(l => l.Index));
        Assert.Contains("p0 · s1", setups[1].Statuses[0].Message, StringComparison.Ordinal);
        foreach (var setup in new[] { "s0", "s1" })
        {
            AnswerOptions options = new()
            {
                Whose = Whose.This,
                Conditions = new() { Photographer = "p0", Setup = setup },
                CheckPriors = false,
            };
            var at = ShutterSpeed.OneOver(30);
            Assert.All(
                new Answer[]
                {
                    curve.RateAt(at, options),
                    curve.HalfKeeperExposure(options),
                    curve.Slowest(0.5, 0.5, options),
                    curve.FramesNeeded(at, 1, 0.5, options),
                    curve.KeepersToExpect(at, 5, options),
                },
                answer => Assert.Equal(setup == "s1", answer.Statuses.Any(s => s.Code == StatusCode.Approximate))
            );
        }

        Assert.Equal([true, false], new[] { "p0", "p1" }.Select(p => Between(p).Statuses.Any(s => s.Code == StatusCode.Approximate)));

        StopsDifference Between(string photographer) =>
            curve.SlowerUnder(
                new() { Photographer = photographer, Setup = "s1" },
                new() { Photographer = photographer, Setup = "s0" },
                0.5,
                new() { Whose = Whose.This }
            );
    }

    /// <summary>The same curve, but the draws of one setup weigh next to nothing beside its first hundred.</summary>
    private static KeeperCurve WithFewPointsFor(KeeperCurve curve, int level)
    {
        var (varying, setups) = (curve.Varying!, curve.Varying!.Spreads.Single(s => s.Grouping.Varying.Column == "setup"));
        VaryingPosterior few = new(
            varying.Moved,
            varying.Draws,
            varying.Spreads,
            (grouping, place) =>
            {
                var (block, draws) = varying.Level(grouping, place);
                return grouping != varying.Spreads.IndexOf(setups) || place != level
                    ? (block, draws)
                    : (block, [.. draws.Select((d, k) => k < 100 ? d : d with { Own = 1e-6 })]);
            },
            new(1, () => [0])
        );
        return new(curve.Key, curve.Data, curve.Model, curve.HalfPointPrior, curve.Parameters, new(() => []))
        {
            Varying = few,
            Term = few.Typical,
            Sampling = curve.Sampling,
            FindLevels = new(() => Handhold.Fitting.VaryingSummaries.Of(curve.Model, curve.Data, few, curve.ReferenceConditions)),
        };
    }
}
