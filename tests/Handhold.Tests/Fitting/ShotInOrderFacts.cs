namespace Handhold.Tests.Fitting;

public class ShotInOrderFacts
{
    [Theory]
    [InlineData(Estimator.Posterior)]
    [InlineData(Estimator.Likelihood)]
    public void Speeds_shot_in_order_within_a_session_are_told_also_by_a_saved_fit(Estimator estimator)
    {
        var fit = (KeeperModel.Default with { Estimator = estimator }).Fit(Rows("monday", "Kim", [6, 5, 4, 3, 2, 1]));
        Assert.True(IsTold(fit));
        Assert.True(IsTold(SavedFit.Read(SavedFit.Write(fit), cancellation: TestContext.Current.CancellationToken)));
        var mixed = (KeeperModel.Default with { Estimator = estimator }).Fit(Rows("monday", "Kim", [3, 1, 6, 2, 5, 4]));
        Assert.False(IsTold(mixed));
    }

    public static TheoryData<int[], bool> Orders =>
        new()
        {
            { [2, 1, 4, 3, 6, 5], true }, // rank correlation 0.83
            { [3, 1, 2, 6, 4, 5], false }, // 0.66
            { [4, 3, 6, 1, 2, 5], false },
            { [1, 2, 3], false }, // too few to tell
            { [1, 1, 1, 1, 1], false }, // no order
            { [10, 200, 3000, 40000], true }, // ranks, not sizes
        };

    [Theory]
    [MemberData(nameof(Orders))]
    public void Rows_are_in_order_where_ranks_go_together(int[] orders, bool told) =>
        Assert.Equal(told, IsTold(Rows("monday", "Kim", orders)));

    [Fact]
    public void Frames_of_one_speed_after_the_other_are_in_order_and_a_way_up_and_down_is_not()
    {
        Assert.True(IsTold(Frames([8, 7, 6, 5, 4])));
        Assert.False(IsTold(Frames([8, 7, 6, 5, 4, 4, 5, 6, 7, 8])));
        Assert.False(IsTold(Frames([6, 6, 6])));

        static FrameTable Frames(int[] stops) =>
            [
                .. from place in Enumerable.Range(0, 3 * stops.Length)
                let stop = stops[place / 3]
                select new FrameCell(ShutterSpeed.FromLog2Seconds(-stop), 1, stop > 5 ? 1 : 0) { Conditions = new() { Order = place + 1 } },
            ];
    }

    /// <summary>Later days at slower speeds are no fatigue within a day.</summary>
    [Fact]
    public void Order_is_judged_within_a_session_and_one_in_order_is_enough()
    {
        FrameTable days =
        [
            .. from day in Enumerable.Range(0, 4)
            from i in Enumerable.Range(0, 4)
            select new FrameCell(ShutterSpeed.FromLog2Seconds(2 * day - 12 + (i is 1 or 2 ? 1 : 0)), 4, Math.Clamp(6 - 2 * day, 0, 4))
            {
                Conditions = new() { Session = $"day {day}", Order = 4 * day + i + 1 },
            },
        ];
        Assert.False(IsTold(days));
        Assert.True(IsTold([.. Rows("monday", null, [3, 1, 5, 2, 4]), .. Rows("tuesday", null, [1, 2, 3, 4, 5])]));
        Assert.False(IsTold([.. Rows("monday", null, [3, 1, 5, 2, 4]), .. Rows("tuesday", null, [2, 5, 1, 4, 3])]));
    }

    [Fact]
    public void Without_an_order_nothing_is_said() =>
        Assert.False(
            IsTold([.. Rows("monday", null, [1, 2, 3, 4, 5]).Select(row => row with { Conditions = row.Conditions with { Order = null } })])
        );

    private static FrameTable Rows(string session, string? photographer, int[] orders) =>
        [
            .. orders.Select(
                (order, stop) =>
                    new FrameCell(ShutterSpeed.FromLog2Seconds(stop - 8), 6, Math.Max(0, 6 - stop))
                    {
                        Conditions = new()
                        {
                            Session = session,
                            Photographer = photographer,
                            Order = order,
                        },
                    }
            ),
        ];

    private static bool IsTold(FrameTable table) => IsTold((KeeperModel.Default with { Estimator = Estimator.BiasReduced }).Fit(table));

    private static bool IsTold(FittedCurves fit) => fit.Only.Statuses.Any(s => s.Code == StatusCode.OrderConfounded);
}
