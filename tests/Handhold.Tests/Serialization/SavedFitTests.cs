namespace Handhold.Tests.Serialization;

public class SavedFitTests
{
    private static readonly FittedCurves s_rich = KeeperModel.Default.Fit(SavedFits.RichTable);
    private static readonly string s_text = SavedFit.Write(s_rich);

    [Fact]
    public void A_fit_read_back_knows_the_same_to_the_last_bit()
    {
        var read = SavedFit.Read(s_text);
        Assert.Equal(s_rich.Select(c => c.Key.ToString()), read.Select(c => c.Key.ToString()));
        Assert.Equal(Numbers(s_rich), Numbers(read));
    }

    [Fact]
    public void A_fit_read_back_is_written_as_before() => Assert.Equal(s_text, SavedFit.Write(SavedFit.Read(s_text)));

    [Fact]
    public void A_model_of_the_users_own_is_read_back_as_it_was()
    {
        var mine = KeeperModel.Default with
        {
            Priors = Priors.Default with { HalfPoint = new(-5.1, 0.1 + 0.2), Steepness = new(1.7, 0.3), BurstLuck = new(0.11) },
            Ceiling = Ceiling.Fixed(0.97),
            Floor = Floor.Fixed(0.02),
            Luck = LuckKind.None,
            Bursts = BurstUse.None,
            Level = 0.8,
            Seed = 7,
            Each = ["setup", "session"],
        };
        var read = SavedFit.Read(SavedFit.Write(mine.Fit(SavedFits.RichTable))).Model;
        Assert.Equal(mine.Each, read.Each);
        Assert.Equal(mine.Terms, read.Terms);
        Assert.Equal(mine.Products, read.Products);
        Assert.Equal(mine.Varies, read.Varies);
        Assert.Equal(WithoutLists(mine), WithoutLists(read));

        static KeeperModel WithoutLists(KeeperModel model) => model with { Each = [], Terms = [], Products = [], Varies = [] };
    }

    [Fact]
    public void A_fit_of_bursts_by_row_is_read_back_to_the_last_bit()
    {
        var fit = (KeeperModel.Default with { Bursts = BurstUse.PerRow }).Fit(SavedFits.RichTable);
        Assert.Equal(Numbers(fit), Numbers(SavedFit.Read(SavedFit.Write(fit))));
    }

    [Fact]
    public void No_type_of_ours_or_the_frameworks_is_named()
    {
        Assert.DoesNotContain("Handhold.", s_text, StringComparison.Ordinal);
        Assert.DoesNotContain("System.", s_text, StringComparison.Ordinal);
    }

    [Fact]
    public void Without_its_counts_a_fit_of_one_curve_is_below_ten_thousand_bytes() =>
        Assert.True(SavedFit.Write(KeeperModel.Default.Fit(SavedFits.QuickTable), withCells: false).Length < 10_000);

    private static IEnumerable<double> Numbers(FittedCurves fit) =>
        fit.SelectMany(c =>
            c.Parameters.SelectMany(p => new[] { p.Median, p.Mean, p.StandardDeviation, p.Interval.Lower, p.Interval.Upper })
                .Concat([c.LogLikelihood, c.Deviance, c.HalfPointPrior!.Mean, c.HalfPointPrior.StandardDeviation])
                .Concat([c.Data.Rows, c.Data.Frames, c.Data.Keepers, c.Data.Unjudged, c.Data.Sessions, c.Data.Bursts])
        );
}
