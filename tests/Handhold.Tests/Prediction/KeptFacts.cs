using System.Collections.Immutable;
using Handhold.Randomness;
using static Handhold.ShutterSpeed;

namespace Handhold.Tests.Prediction;

public class KeptFacts
{
    private static readonly KeeperCurve s_curve = KeeperModel
        .Default.Fit([
            new(OneOver(60), 12, 12) { Conditions = Kim },
            new(OneOver(30), 12, 10) { Conditions = Kim },
            new(OneOver(15), 12, 6) { Conditions = Kim },
            new(OneOver(8), 12, 1) { Conditions = Kim },
        ])
        .Only;

    private static readonly FramesNeededAnswer s_answer = s_curve.FramesNeeded(OneOver(15), keepers: 2, assurance: 0.9);

    private static readonly PlannedShoot s_plan = PlannedShoot.Of(s_answer);

    private static Conditions Kim => Conditions.None with { Photographer = "Kim" };

    private static FrameCell Shot(int frames, int keepers, int unjudged = 0, string day = "mon", string? burst = null) =>
        new(FromSeconds(0.0667), frames, keepers) { Unjudged = unjudged, Conditions = Kim with { Session = day, Burst = burst } };

    private static ShotPlan Only(params FrameCell[] shot) => Assert.Single(KeptReport.Of([s_plan], [.. shot]).Shoots);

    [Fact]
    public void What_was_promised_is_the_chance_in_the_predicted_counts()
    {
        Assert.Equal(s_plan.Frames + 1, s_plan.Probabilities.Length);
        Assert.Equal(1, s_plan.Probabilities.Sum(), 9);
        Assert.Equal(s_plan.Assurance, s_plan.Probabilities[2..].Sum(), 9);
        Assert.True(s_plan.Assurance >= s_plan.WantedAssurance && s_plan.WantedAssurance == 0.9);
    }

    [Theory]
    [InlineData(0, 2, 0, PlanOutcome.Kept)]
    [InlineData(0, 1, 0, PlanOutcome.Broken)]
    [InlineData(0, 1, 1, PlanOutcome.Undecided)]
    [InlineData(0, 2, 1, PlanOutcome.Kept)]
    [InlineData(-3, 2, 0, PlanOutcome.Kept)]
    [InlineData(-3, 1, 0, PlanOutcome.Undecided)]
    [InlineData(-1, 0, 0, PlanOutcome.Broken)]
    [InlineData(1, 2, 0, PlanOutcome.Undecided)]
    [InlineData(1, 3, 0, PlanOutcome.Kept)]
    [InlineData(5, 1, 0, PlanOutcome.Broken)]
    public void A_plan_is_kept_or_broken_only_where_no_other_frame_could_change_it(
        int surplus,
        int keepers,
        int unjudged,
        PlanOutcome outcome
    )
    {
        var shot = Only(Shot(s_plan.Frames + surplus - unjudged, keepers, unjudged));
        Assert.Equal(outcome, shot.Outcome);
        Assert.Equal(surplus == 0 && unjudged == 0, shot.Place is not null);
    }

    [Fact]
    public void Frames_shot_in_other_bursts_than_planned_keep_no_promise()
    {
        var (first, rest) = (Shot(1, 1, burst: "1"), Shot(s_plan.Frames - 1, 1, burst: "2"));
        Assert.Equal(PlanOutcome.OtherBursts, Only(first, rest).Outcome);
        Assert.Equal(PlanOutcome.Kept, Only(first, rest with { Conditions = first.Conditions }).Outcome);
    }

    [Fact]
    public void Frames_of_another_curve_speed_or_plan_are_not_counted()
    {
        var shot = Shot(s_plan.Frames, 2);
        Assert.Single(KeptReport.Of([s_plan], [new(OneOver(60), 6, 6) { Conditions = Kim }]).NotShot);
        Assert.Single(KeptReport.Of([s_plan], [shot with { Conditions = shot.Conditions with { Photographer = "Robin" } }]).NotShot);
        var named = shot with { Conditions = shot.Conditions.With("plan", "2") };
        var report = KeptReport.Of([s_plan, PlannedShoot.Of(s_answer, 2)], [named]);
        Assert.Equal(2, Assert.Single(report.Shoots).Plan.Number);
    }

    [Fact]
    public void Each_day_is_a_shoot_and_shoots_of_one_day_widen_the_interval()
    {
        FrameTable table = [Shot(s_plan.Frames, 3, day: "mon"), Shot(s_plan.Frames, 2, day: "tue"), Shot(s_plan.Frames, 1, day: "wed")];
        var apart = KeptReport.Of([s_plan], table).Overall!;
        Assert.Equal((2, 3, 3), (apart.Kept, apart.Decided, apart.Days));
        var wilson = BinomialInterval.Wilson(2, 3);
        Assert.Equal((wilson.Lower, wilson.Upper), (apart.Interval.Lower, apart.Interval.Upper));
        Assert.Equal(1 - Math.Pow(s_plan.Assurance, 3), apart.ChanceOfAsFew!.Value, 12);

        FrameCell[] twice = [.. "12".SelectMany(plan => table.Select(c => c with { Conditions = c.Conditions.With("plan", $"{plan}") }))];
        var shared = KeptReport.Of([s_plan, PlannedShoot.Of(s_answer, 2)], [.. twice]).Overall!;
        Assert.Equal((6, 3, 2.0 / 3), (shared.Decided, shared.Days, shared.Share));
        Assert.Equal((apart.Interval.Lower, apart.Interval.Upper), (shared.Interval.Lower, shared.Interval.Upper));
        Assert.Null(shared.ChanceOfAsFew);
    }

    [Fact]
    public void Places_of_counts_that_come_as_predicted_are_uniform()
    {
        const int Days = 1000;
        var chance = Seed.From(20261126).Stream(0);
        ImmutableArray<FrameCell> shot =
        [
            .. Enumerable
                .Range(0, Days)
                .Select(d => Shot(s_plan.Frames, Draw(chance.Uniform()), day: FormattableString.Invariant($"day {d}"))),
        ];
        var report = KeptReport.Of([s_plan], [.. shot]);
        double[] places = [.. report.Shoots.Select(s => s.Place!.Value).Order()];
        var farthest = places.Select((p, i) => Math.Abs(p - (i + 0.5) / Days)).Max();
        Assert.True(farthest < 1.95 / Math.Sqrt(Days), $"{farthest}");
        Assert.InRange(report.Overall!.Share - s_plan.Assurance, -0.04, 0.04);
        Assert.Equal(places, KeptReport.Of([s_plan], [.. shot]).Shoots.Select(s => s.Place!.Value).Order());

        int Draw(double u)
        {
            var k = 0;
            for (var sum = s_plan.Probabilities[0]; sum < u; sum += s_plan.Probabilities[k])
                k++;
            return k;
        }
    }

    [Fact]
    public void New_frames_join_the_old_as_a_day_of_their_own()
    {
        FrameTable old = [new(OneOver(60), 6, 6), new(OneOver(30), 6, 3), new(OneOver(15), 6, 0)];
        FrameTable more = [new(OneOver(30), 6, 5)];
        var quick = KeeperModel.Default with { Ceiling = Ceiling.One };
        var once = quick.Fit(old).FitWith(more);
        Assert.Equal((24, 2), (once.Only.Data.Frames, once.Only.Data.Sessions));
        var twice = once.FitWith(more);
        Assert.Equal((30, 3), (twice.Only.Data.Frames, twice.Only.Data.Sessions));
    }

    [Fact]
    public void An_answer_without_frames_is_no_plan() =>
        Assert.Throws<ArgumentException>(() => PlannedShoot.Of(s_curve.FramesNeeded(OneOver(8), 5, 0.99, new() { Budget = 6 })));
}
