using Handhold.Curves;
using Handhold.Fitting;

namespace Handhold.Tests.Pooling;

/// <summary>What is said of levels that the points of a posterior stand badly for.</summary>
public class LevelDoubtFacts
{
    private static KeeperModel Model { get; } =
        KeeperModel.Default with
        {
            Luck = LuckKind.None,
            Each = [],
            Varies = [new("photographer", VaryingPart.Both), Groups.Nested],
        };

    private static FrameTable Club { get; } = Groups.Club(2);

    private static Lazy<KeeperCurve> Fitted { get; } = new(() => Model.Fit(Club).Only);

    private static Lazy<VaryingSample> Sample { get; } =
        new(() => VaryingSample.Of(Model, CurveRows.Split(Model, Club)[0], 4096, rough: true, null, default));

    /// <summary>Where the change of the log density is a line in a number, its covariance with the number is slope times variance.</summary>
    [Theory]
    [InlineData(0.3)]
    [InlineData(-0.02)]
    public void A_number_moves_by_its_sd_times_the_slope_of_the_density_change(double slope)
    {
        double[] values = [1, 2, 3, 4, 1000];
        NodeChange nodes = new(4, () => [.. values.Take(4).Select(v => new[] { 7 + slope * v, 1 - v })]);
        var sd = Math.Sqrt(1.109375); // of 1, 2, 3, 4 by weights 1, 1, 2, 4
        Assert.Equal((slope - 1) * sd, nodes.Of(values, [1, 1, 2, 4, 1], null).Value, 1e-14);
        Assert.Equal(slope * sd, nodes.Of(values, [1, 1, 2, 4, 1], ownBlock: 1).Value, 1e-14);
        Assert.Equal(0, nodes.Of([5, 5, 5, 5, 5], [1, 1, 2, 4, 1], null).Value);
    }

    /// <summary>To first order the mean by weights that more nodes give.</summary>
    [Fact]
    public void What_more_nodes_change_is_what_they_make_of_the_weights()
    {
        var rows = CurveRows.Split(Model, Club)[0];
        var sample = VaryingSample.Of(Model, rows, 128, rough: false, null, default);
        var draws = sample.Posterior.Draws;
        double[] changes = [.. draws.Select(d => Log(d, IntegralRule.More) - Log(d, IntegralRule.Usual))];
        var most = changes.Max(Math.Abs);
        Assert.InRange(most, 1e-4, 0.5);
        foreach (var of in (Func<VaryingDraw, double>[])[d => d.Typical.Tau0, d => d.Loadings[0].Tau, d => d.Loadings[1].Tau])
        {
            double[] weights = [.. draws.Select(d => d.Typical.Weight)];
            double[] finer = [.. weights.Zip(changes, (w, change) => w * Math.Exp(change))];
            var summary = sample.Posterior.Summary("", of, 0.95, "");
            var moved = (Mean(finer) - Mean(weights)) / summary.StandardDeviation;
            Assert.Equal(moved, summary.NodeChange!.Value, most * most);

            double Mean(double[] by) => draws.Zip(by, (d, w) => of(d) * w).Sum() / by.Sum();
        }

        double Log(VaryingDraw draw, IntegralRule rule)
        {
            var t = draw.Typical;
            TermPoint point = new(t.Tau0, t.LogSteepness, t.Ceiling, t.Floor, t.SessionSd, t.BurstSd);
            return sample.Density.LogLikelihood(new(point, [.. t.Effects], draw.Loadings), rule);
        }
    }

    [Fact]
    public void Every_level_says_how_its_points_stand_and_that_they_stand_well() =>
        Assert.All(
            Fitted.Value.Levels.SelectMany(g => g.Levels),
            level =>
            {
                Assert.All(level.Effects, effect => Assert.InRange(effect.NodeChange!.Value, -0.05, 0.05));
                Assert.InRange(level.Sampling.EffectiveSize, 400, level.Sampling.Points);
                Assert.InRange(level.Sampling.Points, 0.9 * Fitted.Value.Sampling!.Points, Fitted.Value.Sampling.Points);
                Assert.Empty(level.Statuses);
            }
        );

    [Theory]
    [InlineData(0.06, "move a parameter by 0.060 of its standard deviation")]
    [InlineData(double.NaN, "move a parameter out of sight")]
    [InlineData(0.04, null)]
    public void A_parameter_that_more_nodes_move_makes_a_curve_approximate(double change, string? told)
    {
        var parameter = new WeightedValues([(0, 0.5), (1, 0.5)]).Summary("tau0", 0.95, "", new(() => -change));
        var statuses = VaryingStatuses.Of(
            Model,
            Fitted.Value.Data,
            Sample.Value,
            [parameter],
            [],
            new(Model, Fitted.Value.Data, Sample.Value)
        );
        var found = statuses.SingleOrDefault(s => s.Code == StatusCode.Approximate);
        Assert.Equal(told is null, found is null);
        Assert.Contains(told ?? "", found?.Message ?? "", StringComparison.Ordinal);
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
            2,
            new(
                1,
                () =>
                    [
                        [0],
                    ]
            )
        );
        return new(curve.Key, curve.Data, curve.Model, curve.HalfPointPrior, curve.Parameters, new(() => []))
        {
            Varying = few,
            Term = few.Typical,
            Sampling = curve.Sampling,
            FindLevels = new(() => VaryingSummaries.Of(curve.Model, curve.Data, few, curve.ReferenceConditions)),
        };
    }
}
