namespace Handhold.Tests.Prediction;

public class SidesFacts
{
    private static readonly string[] Grips = ["free", "braced"];

    private static FrameTable Table(Func<string, string> session) =>
        [
            .. from grip in Grips
            from stop in Enumerable.Range(0, 6)
            select new FrameCell(ShutterSpeed.FromLog2Seconds(stop - 8), 12, Math.Clamp(13 - 3 * stop + (grip == "braced" ? 3 : 0), 0, 12))
            {
                Conditions = Conditions.None.With("grip", grip) with { Session = session(grip) },
            },
        ];

    private static StopsDifference Compare(Estimator estimator, Func<string, string> session, AnswerOptions? options = null) =>
        (KeeperModel.Default with { Estimator = estimator, Terms = ["grip"] })
            .Fit(Table(session))
            .Only.SlowerUnder(Conditions.None.With("grip", "braced"), Conditions.None.With("grip", "free"), 0.5, options);

    private static bool IsConfounded(StopsDifference difference) =>
        difference.Statuses.Any(s => s.Code == StatusCode.ConfoundedWithSession);

    [Theory]
    [InlineData(Estimator.Posterior)]
    [InlineData(Estimator.BiasReduced)]
    [InlineData(Estimator.Likelihood)]
    public void Levels_that_share_no_session_are_confounded_with_it(Estimator estimator)
    {
        Assert.True(IsConfounded(Compare(estimator, grip => grip)));
        Assert.False(IsConfounded(Compare(estimator, _ => "monday")));
    }

    [Fact]
    public void Sides_of_two_days_differ_by_two_days_luck_on_other_days()
    {
        var (another, same) = (Compare(Estimator.Posterior, g => g), Compare(Estimator.Posterior, g => g, new() { Day = Day.Same }));
        Assert.True(another.Interval!.Upper - another.Interval.Lower > 1.1 * (same.Interval!.Upper - same.Interval.Lower));
        Assert.Equal(another.Stops!.Value.Value, same.Stops!.Value.Value, 0.1);
    }

    [Theory]
    [InlineData(Estimator.Posterior)]
    [InlineData(Estimator.BiasReduced)]
    public void A_larger_lead_is_less_probable(Estimator estimator)
    {
        var difference = Compare(estimator, _ => "monday");
        double[] chances = [.. new[] { -1.0, 0, 0.5, 1, 2 }.Select(s => difference.ProbabilityBetterBy(new(s))!.Value)];
        Assert.Equal(chances.OrderDescending(), chances);
        Assert.Equal(difference.ProbabilityBetter!.Value, chances[1], 1e-12);
        Assert.Equal(0.5, difference.ProbabilityBetterBy(difference.Stops!.Value)!.Value, 0.01);
    }

    [Fact]
    public void Sides_that_share_a_session_or_recorded_none_are_not_confounded()
    {
        Assert.True(IsConfounded(Lenses("wide", "monday", "long", "tuesday")));
        Assert.False(IsConfounded(Lenses("wide", "monday", "long", "monday")));
        Assert.False(IsConfounded(Lenses("wide", null, "long", null)));
        Assert.False(IsConfounded(Lenses("wide", "monday", "long", "tuesday", both: "wednesday")));

        static StopsDifference Lenses(string a, string? dayOfA, string b, string? dayOfB, string? both = null)
        {
            FrameTable table =
            [
                .. from side in new[] { (Setup: a, Day: dayOfA), (Setup: b, Day: dayOfB) }
                from day in new[] { side.Day, both }.Where((d, i) => i == 0 || d is not null)
                from stop in Enumerable.Range(0, 5)
                select new FrameCell(ShutterSpeed.FromLog2Seconds(stop - 8), 8, 8 - 2 * stop)
                {
                    Conditions = new() { Setup = side.Setup, Session = day },
                },
            ];
            var curves = (KeeperModel.Default with { Estimator = Estimator.BiasReduced }).Fit(table);
            return curves
                .Single(c => c.Data.Cells[0].Conditions.Setup == b)
                .SlowerThan(curves.Single(c => c.Data.Cells[0].Conditions.Setup == a), 0.5);
        }
    }

    /// <summary>Equal counts once made the search for where both stand go on for ever.</summary>
    [Theory]
    [InlineData(Estimator.BiasReduced)]
    [InlineData(Estimator.Likelihood)]
    public void Curves_of_equal_counts_are_as_likely_better_as_worse(Estimator estimator)
    {
        FrameTable table =
        [
            .. from setup in new[] { "long", "wide" }
            from day in Enumerable.Range(0, 2)
            from stop in Enumerable.Range(0, 5)
            select new FrameCell(ShutterSpeed.FromLog2Seconds(stop - 8), 8, 7 - stop - day) { Conditions = new() { Setup = setup } },
        ];
        var curves = (KeeperModel.Default with { Estimator = estimator }).Fit(table);
        var difference = curves[1].SlowerThan(curves[0], 0.5);
        Assert.Equal(0, difference.Stops!.Value.Value, 1e-9);
        Assert.Equal(0.5, difference.ProbabilityBetter!.Value, 1e-6);
    }

    /// <summary>Two people do not share a day's luck because they give their days one name.</summary>
    [Fact]
    public void A_day_of_two_photographers_is_two_days()
    {
        FrameTable table =
        [
            .. from person in new[] { "Kim", "Robin" }
            from stop in Enumerable.Range(0, 5)
            select new FrameCell(ShutterSpeed.FromLog2Seconds(stop - 8), 8, 8 - 2 * stop)
            {
                Conditions = new() { Photographer = person, Session = "monday" },
            },
        ];
        var curves = (KeeperModel.Default with { Estimator = Estimator.BiasReduced }).Fit(table);
        Assert.True(IsConfounded(curves[1].SlowerThan(curves[0], 0.5)));
    }

    /// <summary>Of a magnification between those shot nobody knows on which day it would have been.</summary>
    [Fact]
    public void Conditions_that_no_frame_had_are_of_no_day()
    {
        FrameTable table =
        [
            .. from wind in new[] { (Speed: "2", Day: "monday"), (Speed: "6", Day: "tuesday") }
            from stop in Enumerable.Range(0, 5)
            select new FrameCell(ShutterSpeed.FromLog2Seconds(stop - 8), 8, 8 - 2 * stop)
            {
                Conditions = Conditions.None.With("wind", wind.Speed) with { Session = wind.Day },
            },
        ];
        var curve = (KeeperModel.Default with { Estimator = Estimator.BiasReduced, Terms = ["wind"] }).Fit(table).Only;
        Assert.True(IsConfounded(Between("6", "2")));
        Assert.False(IsConfounded(Between("5", "2")));

        StopsDifference Between(string b, string a) =>
            curve.SlowerUnder(Conditions.None.With("wind", b), Conditions.None.With("wind", a), 0.5);
    }
}
