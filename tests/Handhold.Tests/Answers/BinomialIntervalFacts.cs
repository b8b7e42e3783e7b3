using FsCheck.Xunit;

namespace Handhold.Tests.Answers;

public class BinomialIntervalFacts
{
    private const string Case = "binomial-intervals";

    [Fact]
    public void Every_interval_agrees_with_an_independent_computation()
    {
        foreach (var row in GoldenFolder.Rows(Case, "intervals.csv"))
        {
            var (k, n) = ((int)row.Number("keepers"), (int)row.Number("frames"));
            Same(row, "exact", Ends(BinomialInterval.ClopperPearson(k, n)), 1e-13);
            Same(row, "wilson", Ends(BinomialInterval.Wilson(k, n)), 1e-13);
            Same(row, "exact90", Ends(BinomialInterval.ClopperPearson(k, n, 0.9)), 1e-13);
            Same(row, "wilson90", Ends(BinomialInterval.Wilson(k, n, 0.9)), 1e-13);
            Same(row, "midp", Ends(BinomialInterval.MidP(k, n)), 1e-12);
            var jeffreys = BinomialInterval.Jeffreys(k, n);
            Same(row, "jeffreys", (jeffreys.Lower, jeffreys.Upper), 1e-13);
        }
    }

    [Fact]
    public void Newcombes_published_examples_come_out_to_their_four_decimals()
    {
        foreach (var row in GoldenFolder.Rows(Case, "newcombe.csv"))
        {
            var (k, n) = ((int)row.Number("keepers"), (int)row.Number("frames"));
            var (lower, upper) = Ends(
                row["method"] switch
                {
                    "wilson" => BinomialInterval.Wilson(k, n),
                    "exact" => BinomialInterval.ClopperPearson(k, n),
                    "midp" => BinomialInterval.MidP(k, n),
                    var other => throw new InvalidOperationException(other),
                }
            );
            Assert.Equal(row.Number("lower"), lower, 5e-5);
            Assert.Equal(row.Number("upper"), upper, 5e-5);
        }
    }

    [Fact]
    public void Ends_are_exactly_0_or_1_when_no_frame_or_every_frame_was_a_keeper()
    {
        foreach (
            var make in new[]
            {
                BinomialInterval.Wilson,
                BinomialInterval.ClopperPearson,
                (Func<int, int, double, ConfidenceInterval>)BinomialInterval.MidP,
            }
        )
        foreach (var frames in new[] { 1, 7, 20, 1_000_000 })
        {
            Assert.Equal(0, make(0, frames, 0.95).Lower);
            Assert.Equal(1, make(frames, frames, 0.95).Upper);
        }
    }

    [Property(Replay = "(20250131,7)", MaxTest = 300)]
    public bool Exchanging_keepers_and_rejects_mirrors_the_interval_and_it_holds_the_observed_rate(ushort a, ushort b, byte l)
    {
        var (k, n, level) = (Math.Min(a, b), Math.Max(Math.Max(a, b), (ushort)1), 0.5 + l / 512.0);
        ConfidenceInterval[] ours =
        [
            BinomialInterval.Wilson(k, n, level),
            BinomialInterval.ClopperPearson(k, n, level),
            BinomialInterval.MidP(k, n, level),
        ];
        ConfidenceInterval[] mirrored =
        [
            BinomialInterval.Wilson(n - k, n, level),
            BinomialInterval.ClopperPearson(n - k, n, level),
            BinomialInterval.MidP(n - k, n, level),
        ];
        return ours.Zip(mirrored).All(pair => Math.Abs(pair.First.Lower - (1 - pair.Second.Upper)) < 1e-15)
            && ours.All(interval => interval.Lower <= (double)k / n && (double)k / n <= interval.Upper)
            && ours[1].Lower <= ours[2].Lower
            && ours[2].Upper <= ours[1].Upper;
    }

    [Theory]
    [InlineData(3, 0, 0.95, "Frames of an interval: 0. Give a whole number from 1 to 2147483647.")]
    [InlineData(-1, 5, 0.95, "Keepers among 5 frames: -1. Give a whole number from 0 to 5.")]
    [InlineData(6, 5, 0.95, "Keepers among 5 frames: 6. Give a whole number from 0 to 5.")]
    [InlineData(3, 5, 95, "The level of an interval is 95. Give a share above 0 and below 1, such as 0.95.")]
    [InlineData(3, 5, double.NaN, "The level of an interval is NaN. Give a share above 0 and below 1, such as 0.95.")]
    public void Impossible_counts_and_levels_are_refused_with_a_remedy(int keepers, int frames, double level, string sentence)
    {
        Assert.StartsWith(
            sentence,
            Assert.Throws<ArgumentOutOfRangeException>(() => BinomialInterval.Wilson(keepers, frames, level)).Message,
            StringComparison.Ordinal
        );
        Assert.Throws<ArgumentOutOfRangeException>(() => BinomialInterval.Jeffreys(keepers, frames, level));
    }

    private static (double Lower, double Upper) Ends(ConfidenceInterval interval) => (interval.Lower, interval.Upper);

    private static void Same(IReadOnlyDictionary<string, string> row, string method, (double Lower, double Upper) ours, double tolerance)
    {
        Assert.Equal(row.Number(method + "_lower"), ours.Lower, tolerance);
        Assert.Equal(row.Number(method + "_upper"), ours.Upper, tolerance);
    }
}
