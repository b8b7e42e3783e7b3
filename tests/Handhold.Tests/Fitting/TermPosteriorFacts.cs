using Handhold.Curves;
using Handhold.Fitting;

namespace Handhold.Tests.Fitting;

public class TermPosteriorFacts
{
    /// <summary>Without terms the points must say what the quadrature says: two routes to one posterior.</summary>
    [Theory]
    [InlineData(1)]
    [InlineData(2)]
    [InlineData(3)]
    public void Without_terms_the_points_say_what_the_quadrature_says(int sessions)
    {
        var rows = CurveRows.Split(KeeperModel.Default, Table(sessions))[0];
        var curve = KeeperModel.Default.Fit(Table(sessions)).Only;
        var sample = TermSample.Of(KeeperModel.Default, rows, 16384, TestContext.Current.CancellationToken);
        TermPosterior points = new(sample.Moved, sample.Draws, sample.Sessions);
        Same("tau0", d => d.Tau0);
        Same("log2b", d => d.LogSteepness / Math.Log(2));
        Same("ceiling", d => d.Ceiling);
        Same("sessionLuck", d => d.SessionSd);
        Same("burstLuck", d => d.BurstSd);
        var law = points.At(Conditions.None).AnotherDay;
        foreach (var x in new[] { -6.0, -4.5, -3 })
        {
            Assert.Equal(curve.Posterior.AnotherDay.MeanRate(x), law.MeanRate(x), 2e-3);
            foreach (var p in new[] { 0.05, 0.5, 0.95 })
                Assert.Equal(curve.Posterior.AnotherDay.RateQuantile(x, p), law.RateQuantile(x, p), 6e-3);
            var (exact, sampled) = (curve.Posterior.AnotherDay.BurstRates(x), law.BurstRates(x));
            Assert.Equal(exact.AtLeast(2, 8), sampled.AtLeast(2, 8), 2e-3);
            Assert.Equal(
                new BurstsLaw(curve.Posterior.AnotherDay, x).Fewer(2, 2, 3, 1).Sum(),
                new BurstsLaw(law, x).Fewer(2, 2, 3, 1).Sum(),
                2e-3
            );
        }

        // 3 % of a standard deviation in mean and sd, and in the middle; the ends of an interval lie where the density is a seventh.
        void Same(string name, Func<TermDraw, double> value)
        {
            var (by, values) = (curve.Parameters.Single(p => p.Name == name), points.Values(value));
            Assert.Equal(by.Mean, values.Mean, 0.03 * by.StandardDeviation);
            Assert.Equal(by.StandardDeviation, values.StandardDeviation, 0.03 * by.StandardDeviation);
            Assert.Equal(by.Median, values.Quantile(0.5), 0.03 * by.StandardDeviation);
            Assert.Equal(by.Interval.Lower, values.Quantile(0.025), 0.06 * by.StandardDeviation);
            Assert.Equal(by.Interval.Upper, values.Quantile(0.975), 0.06 * by.StandardDeviation);
        }
    }

    [Fact]
    public void The_evidence_of_the_points_is_that_of_the_quadrature()
    {
        var rows = CurveRows.Split(KeeperModel.Default, Table(1))[0];
        var sample = TermSample.Of(KeeperModel.Default, rows, 16384, TestContext.Current.CancellationToken);
        Assert.Equal(KeeperModel.Default.Fit(Table(1)).LogEvidence, sample.LogEvidence, 0.01);
    }

    /// <summary>One burst whose rejects, were they missed focus, are just too unlikely to matter before its luck is averaged over, and matter after it.</summary>
    [Theory]
    [InlineData(4, 1)]
    [InlineData(5, 2)]
    [InlineData(7, 4)]
    [InlineData(3, 0)]
    public void The_evidence_of_a_single_burst_is_that_of_the_points(int frames, int keepers)
    {
        FrameTable table = [new(ShutterSpeed.OneOver(60), frames, keepers) { Conditions = Conditions.None with { Burst = "1" } }];
        var sample = TermSample.Of(
            KeeperModel.Default,
            CurveRows.Split(KeeperModel.Default, table)[0],
            16384,
            TestContext.Current.CancellationToken
        );
        Assert.Equal(sample.LogEvidence, KeeperModel.Default.Fit(table).LogEvidence, 0.01);
    }

    [Fact]
    public void A_ceiling_shared_over_curves_is_that_of_the_quadrature()
    {
        FrameTable table = [.. Table(1, "one"), .. Table(1, "other", lost: 2)];
        var exact = KeeperModel.Default.Fit(table);
        var points = TermFits.Run(
            KeeperModel.Default,
            CurveRows.Split(KeeperModel.Default, table),
            null,
            TestContext.Current.CancellationToken
        );
        for (var j = 0; j < 2; j++)
        {
            var (a, b) = (Ceiling(exact[j]), Ceiling(points[j]));
            Assert.Equal(a.Mean, b.Mean, 0.05 * a.StandardDeviation);
            Assert.Equal(a.StandardDeviation, b.StandardDeviation, 0.05 * a.StandardDeviation);
        }

        Assert.Equal(exact.LogEvidence, points.LogEvidence, 0.03);

        static ParameterSummary Ceiling(KeeperCurve curve) => curve.Parameters.Single(p => p.Name == "ceiling");
    }

    private static FrameTable Table(int sessions, string? setup = null, int lost = 0)
    {
        int[][] keepers =
        [
            [3 - lost, 3],
            [3, 2],
            [3, 3],
            [2, 3],
            [1, 2],
            [0, 1],
            [0, 0],
        ];
        int[] speeds = [250, 125, 60, 30, 15, 8, 4];
        return
        [
            .. from i in Enumerable.Range(0, 7)
            from j in Enumerable.Range(0, 2)
            select new FrameCell(ShutterSpeed.OneOver(speeds[i]), 3, keepers[i][j])
            {
                Conditions = new()
                {
                    Session = FormattableString.Invariant($"day {(2 * i + j) % sessions}"),
                    Burst = FormattableString.Invariant($"burst {i}.{j}"),
                    Setup = setup,
                    EquivalentFocalLength = 50,
                    Criterion = Criterion.Print,
                    StabiliserMode = "off",
                },
            },
        ];
    }
}
