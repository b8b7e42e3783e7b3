using Handhold.Tests.Serialization;
using static Handhold.ShutterSpeed;

namespace Handhold.Tests.Prediction;

public class MissingFacts
{
    private static readonly KeeperModel s_model = KeeperModel.Default with { Ceiling = Ceiling.One };

    private static readonly FrameTable s_table =
    [
        new(OneOver(60), 6, 6) { Conditions = In("1") },
        new(OneOver(30), 4, 3) { Unjudged = 4, Conditions = In("2") },
        new(OneOver(15), 6, 1) { Conditions = In("3") },
        new(OneOver(8), 0, 0) { Unjudged = 3, Conditions = In("4") },
    ];

    private static readonly FrameTable s_rejects =
    [
        new(OneOver(60), 6, 6) { Conditions = In("1") },
        new(OneOver(30), 8, 3) { Conditions = In("2") },
        new(OneOver(15), 6, 1) { Conditions = In("3") },
        new(OneOver(8), 3, 0) { Conditions = In("4") },
    ];

    private static Conditions In(string burst) => Conditions.None with { Burst = burst };

    public static TheoryData<Estimator, BurstUse> Ways =>
        new()
        {
            { Estimator.Posterior, BurstUse.Recorded },
            { Estimator.Posterior, BurstUse.PerRow },
            { Estimator.BiasReduced, BurstUse.Recorded },
        };

    [Theory, MemberData(nameof(Ways))]
    public void Every_answer_is_given_twice_the_second_time_as_if_frames_not_judged_were_rejects(Estimator estimator, BurstUse bursts)
    {
        var model = s_model with { Estimator = estimator, Bursts = bursts };
        var (curve, rejects) = (model.Fit(s_table).Only, model.Fit(s_rejects).Only);
        var saved = SavedFit.Read(SavedFit.Write(model.Fit(s_table))).Only;
        foreach (var asked in new[] { curve, saved })
        {
            var frames = asked.FramesNeeded(OneOver(30), 1, 0.9);
            Assert.Equal(rejects.FramesNeeded(OneOver(30), 1, 0.9).Assurance, ((FramesNeededAnswer)frames.AsRejects!).Assurance);
            Assert.Equal(rejects.RateAt(OneOver(30)).Rate!.Mean, ((RateAnswer)asked.RateAt(OneOver(30)).AsRejects!).Rate!.Mean);
            Assert.Equal(rejects.HalfKeeperExposure().Exposure, ((ExposureAnswer)asked.HalfKeeperExposure().AsRejects!).Exposure);
            Assert.Equal(rejects.Slowest(0.5, 0.8).Shutter, ((SlowestAnswer)asked.Slowest(0.5, 0.8).AsRejects!).Shutter);
            Assert.Equal(
                rejects.KeepersToExpect(OneOver(30), 4).Probabilities,
                ((KeeperCountAnswer)asked.KeepersToExpect(OneOver(30), 4).AsRejects!).Probabilities
            );
            Assert.Equal((7, 7), (asked.Data.Unjudged, asked.Data.NotJudged.Sum(c => c.Unjudged)));
        }
    }

    [Fact]
    public void A_decision_that_changes_says_so_and_one_that_stands_does_not()
    {
        var curve = s_model.Fit(s_table).Only;
        var answer = curve.FramesNeeded(OneOver(30), keepers: 1, assurance: 0.95);
        var other = ((FramesNeededAnswer)answer.AsRejects!).Frames;
        Assert.True(other > answer.Frames);
        var status = Assert.Single(answer.Statuses, s => s.Code == StatusCode.RestsOnMissing);
        Assert.Contains($"{other} frames", status.Message, StringComparison.Ordinal);
        Assert.Contains("7 frames not judged", status.Message, StringComparison.Ordinal);
        var small = curve.FramesNeeded(OneOver(60), keepers: 1, assurance: 0.5);
        Assert.Equal(small.Frames, ((FramesNeededAnswer)small.AsRejects!).Frames);
        Assert.DoesNotContain(small.Statuses, s => s.Code == StatusCode.RestsOnMissing);
    }

    [Fact]
    public void Support_or_not_is_a_decision_too()
    {
        var answer = s_model.Fit(s_table).Only.FramesNeeded(OneOver(30), 1, 0.95, new() { Budget = 4 });
        var within = s_model.Fit(s_table).Only.FramesNeeded(OneOver(30), 1, 0.95, new() { Budget = answer.Frames ?? 8 });
        Assert.True(within.Reachable);
        Assert.False(((FramesNeededAnswer)within.AsRejects!).Reachable);
        Assert.Contains(
            "no number of frames within the budget",
            Assert.Single(within.Statuses, s => s.Code == StatusCode.RestsOnMissing).Message,
            StringComparison.Ordinal
        );
    }

    [Fact]
    public void Where_all_frames_were_judged_or_it_is_not_asked_for_there_is_one_answer()
    {
        Assert.Null(s_model.Fit(s_rejects).Only.RateAt(OneOver(30)).AsRejects);
        Assert.Null(s_model.Fit(s_table).Only.RateAt(OneOver(30), new() { CheckMissing = false }).AsRejects);
    }

    [Fact]
    public void A_file_that_does_not_say_where_the_frames_were_counts_them_and_answers_once()
    {
        var text = SavedFit.Write(SavedFits.QuickModel.Fit([.. SavedFits.QuickTable, new(OneOver(8), 0, 0) { Unjudged = 3 }]));
        var from = text.LastIndexOf(',', text.IndexOf("\"notJudged\"", StringComparison.Ordinal));
        var to = text.IndexOf("],", from, StringComparison.Ordinal) + 1;
        var old = SavedFit.Read(text[..from] + text[to..]).Only;
        Assert.Equal((3, 0, 4), (old.Data.Unjudged, old.Data.NotJudged.Length, old.Data.Rows));
        Assert.Null(old.RateAt(OneOver(30)).AsRejects);
        Assert.NotNull(SavedFit.Read(text).Only.RateAt(OneOver(30)).AsRejects);
    }
}
