using Handhold.Curves;

namespace Handhold.Tests.Pooling;

/// <summary>Levels that vary on the scale of stops.</summary>
public class LevelsInStopsFacts
{
    private static SpreadPriors Tiny { get; } =
        new()
        {
            PhotographerTau = new(1e-5),
            PhotographerLogB = new(1e-5),
            SetupTau = new(1e-5),
            SetupLogB = new(1e-5),
        };

    private static KeeperModel Plain { get; } = KeeperModel.Default with { Luck = LuckKind.None, Each = [] };

    [Theory]
    [InlineData(LuckKind.None)]
    [InlineData(LuckKind.Normal)]
    public void Levels_that_hardly_vary_make_one_curve(LuckKind luck)
    {
        var one = Plain with { Luck = luck };
        var together = one with
        {
            Varies = [new("photographer", VaryingPart.Both), Groups.Nested],
            Priors = Priors.Default with { Spreads = Tiny },
        };
        var (pooled, typical) = (one.Fit(Club(2, 2)).Only, together.Fit(Club(2, 2)).Only);
        foreach (var (expected, found) in pooled.Parameters.Zip(typical.Parameters))
        {
            Assert.Equal(expected.Name, found.Name);
            Assert.Equal(0, (expected.Mean - found.Mean) / expected.StandardDeviation, 0.05);
            Assert.Equal(1, found.StandardDeviation / expected.StandardDeviation, 0.05);
        }

        var at = ShutterSpeed.OneOver(30);
        Assert.Equal(
            pooled.RateAt(at).Rate!.Mean,
            typical
                .RateAt(
                    at,
                    new()
                    {
                        Whose = Whose.This,
                        Conditions = new() { Photographer = "p0", Setup = "s1" },
                    }
                )
                .Rate!.Mean,
            0.005
        );
    }

    [Theory]
    [InlineData(1, 1, 6)]
    [InlineData(1, 3, 4)]
    [InlineData(2, 1, 4)]
    [InlineData(4, 2, 1)]
    public void Few_levels_and_few_frames_are_fitted(int photographers, int setups, int frames)
    {
        var model = Plain with { Varies = [new("photographer", VaryingPart.Both), Groups.Nested], Luck = LuckKind.Normal };
        var curve = model.Fit(Club(photographers, setups, frames)).Only;
        Assert.All(curve.Parameters, p => Assert.True(double.IsFinite(p.StandardDeviation)));
        Assert.All(curve.Levels.SelectMany(g => g.Levels), l => Assert.InRange(l.Borrowed, 0, 1));
        Assert.Equal(photographers == 1, curve.Statuses.Any(s => s.Message.Contains("one photographer only", StringComparison.Ordinal)));
    }

    [Fact]
    public void Levels_that_kept_or_lost_everything_have_a_half_keeper_speed()
    {
        FrameTable table =
        [
            .. from level in Enumerable.Range(0, 6)
            from speed in new[] { 60, 30, 15 }
            select new FrameCell(
                ShutterSpeed.OneOver(speed),
                1,
                level < 2 ? 0
                    : level < 4 ? 1
                    : speed / 60
            )
            {
                Conditions = new() { Photographer = FormattableString.Invariant($"p{level}") },
            },
        ];
        var levels = (Plain with { Varies = [new("photographer")] }).Fit(table).Only.Levels[0].Levels;
        Assert.All(levels, level => Assert.NotNull(level.HalfKeeperExposure));
        Assert.True(levels[0].HalfKeeperExposure!.Value.Seconds < levels[4].HalfKeeperExposure!.Value.Seconds);
        Assert.True(levels[4].HalfKeeperExposure!.Value.Seconds < levels[2].HalfKeeperExposure!.Value.Seconds);
    }

    [Fact]
    public void A_new_level_is_doubted_more_than_the_typical_one_and_the_population_is_nearer_to_half()
    {
        var curve = Fitted.Value;
        var at = ShutterSpeed.OneOver(60);
        var (typical, anew) = (Width(Whose.Typical), Width(Whose.NewPhotographer));
        Assert.True(anew > typical);
        Assert.True(Width(Whose.NewSetup) < anew);
        var (one, all) = (Rate(Whose.Typical).Median, Rate(Whose.Population).Median);
        Assert.True(one > 0.5 && all < one);
        Assert.Equal(Rate(Whose.NewPhotographer).Mean, Rate(Whose.Population).Mean, 0.01);

        double Width(Whose whose) => Rate(whose).Interval.Upper - Rate(whose).Interval.Lower;

        RateEstimate Rate(Whose whose) =>
            curve
                .RateAt(
                    at,
                    new()
                    {
                        Whose = whose,
                        Conditions = new() { Photographer = "p0" },
                        CheckPriors = false,
                    }
                )
                .Rate!;
    }

    [Theory]
    [InlineData(1, 0.8661)]
    [InlineData(2, 0.7967)]
    public void The_population_of_a_known_spread_has_the_average_of_its_rates(double sd, double average)
    {
        // Steepness one logit a stop and a spread that are all but known: half a stop is half a logit.
        var priors = Priors.Default with
        {
            HalfPoint = new(-4, 1e-5),
            Steepness = new(1, 1e-4),
            Spreads = new() { PhotographerTau = new(20) },
        };
        var model = Plain with { Ceiling = Ceiling.One, Priors = priors, Varies = [new("photographer")] };
        var curve = model.Fit(Club(2, 1)).Only;
        var spread = curve.Varying!.Draws[0];
        var known = new VaryingPosterior(
            curve.Varying.Moved,
            [
                spread with
                {
                    Typical = spread.Typical with { Weight = 1, Tau0 = -4, LogSteepness = 0 },
                    Loadings = [LevelLoading.Of(sd, null, 0), spread.Loadings[^1]],
                },
            ],
            curve.Varying.Spreads,
            (_, _) => (0, []),
            1,
            new(
                1,
                () =>
                    [
                        [0],
                    ]
            )
        );
        var exposure = -4 - Math.Log(9); // where a typical photographer keeps nine in ten
        Assert.Equal(average, new PopulationLaw(known, Conditions.None).MeanRate(exposure), 1e-4);
    }

    [Fact]
    public void Whose_rate_is_meant_must_be_said_and_the_levels_named()
    {
        Assert.Equal("whose", Assert.Throws<ConditionsException>(() => Fitted.Value.HalfKeeperExposure()).Term);
        Assert.Equal(
            "photographer",
            Assert.Throws<ConditionsException>(() => Fitted.Value.HalfKeeperExposure(new() { Whose = Whose.This })).Term
        );
    }

    [Fact]
    public void Two_photographers_are_compared_point_by_point_and_the_other_way_round_is_the_opposite()
    {
        var (a, b) = (new Conditions { Photographer = "p0", Setup = "s0" }, new Conditions { Photographer = "p3", Setup = "s0" });
        AnswerOptions options = new() { Whose = Whose.This };
        var (there, back) = (Fitted.Value.SlowerUnder(a, b, 0.5, options), Fitted.Value.SlowerUnder(b, a, 0.5, options));
        Assert.Equal(there.Stops!.Value.Value, -back.Stops!.Value.Value, 1e-9);
        Assert.Equal(there.ProbabilityBetter!.Value, 1 - back.ProbabilityBetter!.Value, 1e-3);
    }

    [Fact]
    public void A_saved_fit_answers_equal_to_the_last_bit()
    {
        FittedCurves fit = Plain with { Varies = [new("photographer", VaryingPart.Both), Groups.Nested] } is var model
            ? model.Fit(Club(3, 2))
            : null!;
        var text = SavedFit.Write(fit);
        var again = SavedFit.Read(text);
        Assert.Equal(text, SavedFit.Write(again));
        AnswerOptions options = new()
        {
            Whose = Whose.This,
            Conditions = new() { Photographer = "p1", Setup = "s1" },
        };
        Assert.Equal(
            fit.Only.RateAt(ShutterSpeed.OneOver(30), options).Rate!.Mean,
            again.Only.RateAt(ShutterSpeed.OneOver(30), options).Rate!.Mean
        );
    }

    [Fact]
    public void A_single_fit_tells_how_far_it_is_and_can_be_stopped_in_between()
    {
        var model = Plain with { Ceiling = Ceiling.One, Varies = [new("photographer")] };
        List<double> told = [];
        _ = model.Fit(Club(2, 1), new Told(told.Add));
        Assert.Equal(told.Order(), told);
        Assert.InRange(told.Count, 100, 10_000);
        Assert.Equal(1, told[^1]);

        using CancellationTokenSource source = new();
        Assert.Throws<OperationCanceledException>(() => model.Fit(Club(2, 1), new Told(share => Stop(share, source)), source.Token));

        static void Stop(double share, CancellationTokenSource source)
        {
            Assert.True(share < 0.9, "The work goes on after it was told to stop.");
            if (share > 0.3)
                source.Cancel();
        }
    }

    private sealed class Told(Action<double> tell) : IProgress<double>
    {
        public void Report(double value) => tell(value);
    }

    private static Lazy<KeeperCurve> Fitted { get; } =
        new(() => (Plain with { Varies = [new("photographer", VaryingPart.Both), Groups.Nested] }).Fit(Club(4, 2)).Only);

    /// <summary>Invented: photographers half a stop apart, setups a third.</summary>
    private static FrameTable Club(int photographers, int setups, int frames = 8) =>
        [
            .. from j in Enumerable.Range(0, photographers)
            from k in Enumerable.Range(0, setups)
            from x in new[] { -7.0, -6, -5, -4, -3 }
            select new FrameCell(
                ShutterSpeed.FromLog2Seconds(x),
                frames,
                (int)Math.Round(0.97 * frames / (1 + Math.Exp(1.6 * (x + 5 - 0.5 * (j - 1) - 0.3 * k))))
            )
            {
                Conditions = new() { Photographer = FormattableString.Invariant($"p{j}"), Setup = FormattableString.Invariant($"s{k}") },
            },
        ];
}
