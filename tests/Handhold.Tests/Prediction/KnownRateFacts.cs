using System.Diagnostics;
using System.Globalization;

namespace Handhold.Tests.Prediction;

public class KnownRateFacts
{
    private const string Case = "frames-needed";

    [Fact]
    public void Frames_needed_are_exact_to_the_last_frame()
    {
        foreach (var row in GoldenFolder.Rows(Case, "expected.csv"))
        {
            int? burstsOf = row["burstsOf"].Length > 0 ? (int)row.Number("burstsOf") : null;
            var answer = KnownRate.FramesNeeded(
                row.Number("rate"),
                row.Number("correlation"),
                (int)row.Number("keepers"),
                row.Number("assurance"),
                burstsOf,
                budget: 1_000_000
            );
            Assert.True(answer.Frames == (int)row.Number("frames"), $"{string.Join(", ", row.Values)}: {answer}");
            Assert.Equal(row.Number("attained"), answer.Assurance, 1e-12);
            Assert.Equal(answer.Frames, answer.Bursts.Sum());
        }
    }

    [Fact]
    public void A_budget_one_frame_short_is_told_with_the_assurance_attained_there()
    {
        foreach (var row in GoldenFolder.Rows(Case, "expected.csv").Where(row => row.Number("frames") > 1))
        {
            int? burstsOf = row["burstsOf"].Length > 0 ? (int)row.Number("burstsOf") : null;
            var budget = (int)row.Number("frames") - 1;
            var (rate, correlation) = (row.Number("rate"), row.Number("correlation"));
            var answer = KnownRate.FramesNeeded(rate, correlation, (int)row.Number("keepers"), row.Number("assurance"), burstsOf, budget);
            Assert.Null(answer.Frames);
            Assert.Empty(answer.Bursts);
            Assert.Equal(StatusCode.OverBudget, Assert.Single(answer.Statuses).Code);
            Assert.Equal(row.Number("before"), answer.Assurance, 1e-12);
        }
    }

    [Fact]
    public void Frames_of_earlier_tables_come_out_again()
    {
        foreach (var row in GoldenFolder.Rows(Case, "table.csv"))
            Assert.Equal(
                (int)row.Number("frames"),
                KnownRate
                    .FramesNeeded(row.Number("rate"), row.Number("correlation"), (int)row.Number("keepers"), row.Number("assurance"))
                    .Frames
            );
    }

    [Fact]
    public void A_success_run_is_one_failure_hoped_for_at_the_rate_of_failures()
    {
        // So many tests that a product below the reliability would show at least one failure with the confidence.
        foreach (var row in GoldenFolder.Rows(Case, "success-run.csv"))
        {
            var failures = (double)(1 - decimal.Parse(row["reliability"], CultureInfo.InvariantCulture));
            Assert.Equal((int)row.Number("tests"), KnownRate.FramesNeeded(failures, 0, 1, row.Number("confidence")).Frames);
        }
    }

    [Fact]
    public void A_million_frames_are_searched_in_well_under_a_second()
    {
        var watch = Stopwatch.StartNew();
        Assert.Null(KnownRate.FramesNeeded(0.01, 0.3, 3, 0.99, null, 1_000_000).Frames);
        Assert.NotNull(KnownRate.FramesNeeded(1e-5, 0, 3, 0.9, null, 1_000_000).Frames);
        Assert.NotNull(KnownRate.FramesNeeded(1e-5, 0.1, 3, 0.9, 7, 1_000_000).Frames);
        Assert.InRange(watch.Elapsed.TotalSeconds, 0, 0.8);
    }

    [Fact]
    public void The_ends_of_the_rate_have_their_own_answers()
    {
        var never = KnownRate.FramesNeeded(0, 0.1, 1, 0.9);
        Assert.Equal(StatusCode.NotReachable, Assert.Single(never.Statuses).Code);
        Assert.Equal(0, never.Assurance);
        var always = KnownRate.FramesNeeded(1, 0.1, 4, 0.9, burstsOf: 3);
        Assert.Equal(4, always.Frames);
        Assert.Equal([3, 1], always.Bursts);
        Assert.Equal(1, always.Assurance);
        var tooMany = KnownRate.FramesNeeded(0.9, 0, 5, 0.9, budget: 4);
        Assert.Equal((null, 0), (tooMany.Frames, tooMany.Assurance));
        Assert.Equal(2, KnownRate.FramesNeeded(0.5, 0, 2, 1e-300).Frames);
        Assert.Equal(StatusCode.OverBudget, Assert.Single(KnownRate.FramesNeeded(double.Epsilon, 0.5, 1, 0.9).Statuses).Code);
    }

    [Theory]
    [InlineData(
        0.2,
        0,
        1,
        null,
        "Shoot 14 frames for 1 keeper: the assurance is 95.6 % if the keeper rate is 20 % and frames are independent."
    )]
    [InlineData(
        0.2,
        0.1,
        1,
        null,
        "Shoot 33 frames in one burst for 1 keeper: the assurance is 95.1 % if the keeper rate is 20 % and two frames of a burst are correlated by 0.1."
    )]
    [InlineData(
        0.2,
        0.1,
        1,
        6,
        "Shoot 17 frames in 2 bursts of 6 and one of 5 for 1 keeper: the assurance is 95.0 % if the keeper rate is 20 % and two frames of a burst are correlated by 0.1."
    )]
    [InlineData(
        0.05,
        0.1,
        1,
        null,
        "1000 frames bring 1 keeper with an assurance of only 88.4 %. Use a support, a faster speed, shorter bursts with a fresh grip between them, or a larger budget."
    )]
    [InlineData(
        0.001,
        0,
        2,
        null,
        "1000 frames bring 2 keepers with an assurance of only 26.4 %. Use a support, a faster speed or a larger budget."
    )]
    [InlineData(0, 0, 2, null, "At a keeper rate of 0 no number of frames brings a keeper. Use a support or a faster speed.")]
    public void The_answer_is_a_sentence(double rate, double correlation, int keepers, int? burstsOf, string sentence) =>
        Assert.Equal(sentence, KnownRate.FramesNeeded(rate, correlation, keepers, 0.95, burstsOf).ToString());

    [Theory]
    [InlineData(20, 0, 1, 0.9, null, 1000, "The keeper rate is 20. Give a share from 0 to 1, such as 0.2.")]
    [InlineData(double.NaN, 0, 1, 0.9, null, 1000, "The keeper rate is NaN. Give a share from 0 to 1, such as 0.2.")]
    [InlineData(0.2, 1, 1, 0.9, null, 1000, "The correlation within a burst is 1. Give a number from 0 (independent frames) to below 1.")]
    [InlineData(0.2, 0, 0, 0.9, null, 1000, "Keepers wanted: 0. Give a whole number from 1 to 2147483647.")]
    [InlineData(0.2, 0, 1, 1, null, 1000, "The assurance is 1. Give a share above 0 and below 1, such as 0.95.")]
    [InlineData(0.2, 0, 1, 0.9, 0, 1000, "Frames a burst: 0. Give a whole number from 1 to 2147483647.")]
    [InlineData(0.2, 0, 1, 0.9, null, 0, "Budget of frames: 0. Give a whole number from 1 to 1000000.")]
    [InlineData(0.2, 0, 1, 0.9, null, 1_000_001, "Budget of frames: 1000001. Give a whole number from 1 to 1000000.")]
    public void Impossible_questions_are_refused_with_a_remedy(
        double rate,
        double correlation,
        int keepers,
        double assurance,
        int? burstsOf,
        int budget,
        string sentence
    ) =>
        Assert.StartsWith(
            sentence,
            Assert
                .Throws<ArgumentOutOfRangeException>(() => KnownRate.FramesNeeded(rate, correlation, keepers, assurance, burstsOf, budget))
                .Message,
            StringComparison.Ordinal
        );

    [Fact]
    public void A_long_search_can_be_stopped()
    {
        using var source = new CancellationTokenSource();
        source.Cancel();
        Assert.Throws<OperationCanceledException>(() => KnownRate.FramesNeeded(0.5, 0.1, 10_000, 0.9, 6, 1_000_000, source.Token));
    }
}
