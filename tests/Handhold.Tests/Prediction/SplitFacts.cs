using static Handhold.ShutterSpeed;

namespace Handhold.Tests.Prediction;

public class SplitFacts
{
    private static readonly KeeperCurve s_curve = KeeperModel
        .Default.Fit([
            .. from i in Enumerable.Range(0, 7)
            from j in Enumerable.Range(0, 2)
            select new FrameCell(
                OneOver(new[] { 250, 125, 60, 30, 15, 8, 4 }[i]),
                3,
                new[,]
                {
                    { 3, 3 },
                    { 3, 3 },
                    { 3, 2 },
                    { 3, 0 },
                    { 2, 0 },
                    { 0, 0 },
                    { 0, 0 },
                }[i, j]
            )
            {
                Conditions = Conditions.None with { Burst = FormattableString.Invariant($"{i}.{j}") },
            },
        ])
        .Only;

    private static readonly AnswerOptions s_options = AnswerOptions.Default with { CheckPriors = false };

    [Fact]
    public void A_split_attains_the_assurance_with_its_frames_and_not_with_smaller_bursts()
    {
        var answer = s_curve.FramesNeeded(OneOver(15), 1, 0.9, s_options);
        Assert.NotEmpty(answer.Splits);
        foreach (var split in answer.Splits)
        {
            Assert.True(split.Assurance >= 0.9 && split.Frames <= answer.Frames);
            Assert.Equal(Chance(split.Bursts, split.BurstsOf), split.Assurance, 1e-9);
            Assert.True(split.BurstsOf == 1 || Chance(split.Bursts, split.BurstsOf - 1) < 0.9);
        }

        double Chance(int bursts, int size) =>
            1 - s_curve.KeepersToExpect(OneOver(15), bursts * size, s_options with { BurstsOf = size }).Probabilities[0];
    }

    [Fact]
    public void Fresh_grips_save_frames_where_bursts_share_luck()
    {
        var answer = s_curve.FramesNeeded(OneOver(15), 1, 0.95, s_options);
        Assert.NotNull(answer.BestSplit);
        Assert.True(answer.BestSplit.Frames < answer.Frames);
    }

    [Fact]
    public void A_plan_in_bursts_is_not_split_again() =>
        Assert.Empty(s_curve.FramesNeeded(OneOver(15), 1, 0.9, s_options with { BurstsOf = 3 }).Splits);

    [Fact]
    public void Over_the_budget_in_one_burst_a_split_within_it_does_or_comes_nearest()
    {
        var needed = s_curve.FramesNeeded(OneOver(15), 1, 0.95, s_options);
        // As many frames as the best split takes, and one fewer than one burst does.
        var within = s_curve.FramesNeeded(OneOver(15), 1, 0.95, s_options with { Budget = needed.Frames!.Value - 1 });
        Assert.False(within.Reachable);
        Assert.Equal(needed.BestSplit!.Frames, within.BestSplit!.Frames);
        Assert.Contains("do it", within.SplitSentence, StringComparison.Ordinal);
        Assert.Null(within.BudgetSplit);
        var budget = needed.BestSplit.Frames - 1;
        var nearest = s_curve.FramesNeeded(OneOver(15), 1, 0.95, s_options with { Budget = budget });
        Assert.Empty(nearest.Splits);
        Assert.InRange(nearest.BudgetSplit!.Frames, 2, budget);
        Assert.InRange(nearest.BudgetSplit.Assurance, nearest.Assurance, 0.95);
        Assert.Contains("come nearest within the budget", nearest.SplitSentence, StringComparison.Ordinal);
    }

    [Fact]
    public void The_sentence_of_a_split_counts_the_frames_that_need_no_judging()
    {
        var answer = s_curve.FramesNeeded(OneOver(15), 1, 0.95, s_options);
        var (split, saved) = (answer.BestSplit!, answer.Frames!.Value - answer.BestSplit!.Frames);
        Assert.Equal(
            FormattableString.Invariant(
                $"{split.Bursts} bursts of {split.BurstsOf}, each with a fresh grip, do what one burst of {answer.Frames} does, with {saved} fewer frame{(saved == 1 ? "" : "s")} to judge."
            ),
            answer.SplitSentence
        );
    }
}
