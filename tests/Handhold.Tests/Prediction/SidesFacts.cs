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

    [Theory]
    [InlineData(Estimator.Posterior)]
    [InlineData(Estimator.Likelihood)]
    public void Speeds_shot_in_order_within_a_session_are_told_also_by_a_saved_fit(Estimator estimator)
    {
        var model = KeeperModel.Default with { Estimator = estimator };
        var inOrder = model.Fit(Ordered([1, 2, 3, 4, 5, 6]));
        Assert.True(IsTold(inOrder));
        Assert.True(IsTold(SavedFit.Read(SavedFit.Write(inOrder), cancellation: TestContext.Current.CancellationToken)));
        Assert.True(IsTold(model.Fit(Ordered([6, 5, 4, 3, 2, 1]))));
        Assert.False(IsTold(model.Fit(Ordered([3, 1, 6, 2, 5, 4]))));

        static bool IsTold(FittedCurves fit) => fit.Only.Statuses.Any(s => s.Code == StatusCode.OrderConfounded);
        static FrameTable Ordered(int[] order) =>
            [
                .. order.Select(
                    (place, stop) =>
                        new FrameCell(ShutterSpeed.FromLog2Seconds(stop - 8), 8, 8 - stop - (stop == 2 ? 1 : 0))
                        {
                            Conditions = new() { Order = place },
                        }
                ),
            ];
    }
}
