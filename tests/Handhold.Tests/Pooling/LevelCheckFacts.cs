using Handhold.Diagnostics;
using Handhold.Kernels;

namespace Handhold.Tests.Pooling;

/// <summary>Checks of a posterior in which levels vary.</summary>
public class LevelCheckFacts
{
    private static readonly KeeperModel s_alone = KeeperModel.Default with { Each = [], Ceiling = Ceiling.One };

    private static readonly KeeperModel s_together = s_alone with { Varies = [new("photographer", VaryingPart.Both)] };

    private static readonly double[] s_speeds = [-8, -7, -6, -5, -4, -3];

    /// <summary>The chance that the rest gives to a cell is the quotient of the evidences with and without it, levels and luck included.</summary>
    [Fact]
    public void Log_predictive_densities_are_differences_of_evidence()
    {
        FrameTable table =
        [
            .. from photographer in new[] { "ada", "bo", "cy" }
            from x in s_speeds[1..5]
            from burst in new[] { "1", "2" }
            select new FrameCell(ShutterSpeed.FromLog2Seconds(x), 4, Kept(4, x + (burst == "1" ? 0 : 0.6), photographer))
            {
                Conditions = new()
                {
                    Photographer = photographer,
                    Session = "monday",
                    Burst = FormattableString.Invariant($"{x}-{burst}"),
                },
            },
        ];
        var whole = s_together.Fit(table);
        var cells = whole.Only.Check().Cells;
        Assert.Equal(24, cells.Length);
        foreach (var cell in cells.Where((_, i) => i % 5 == 0))
        {
            var rest = s_together.Fit([.. whole.Only.Data.Cells.Except(cell.Cells)]);
            Assert.True(cell.IsReliable);
            Assert.Equal(whole.LogEvidence - rest.LogEvidence, cell.LogPredictiveDensity!.Value, 0.06);
        }
    }

    [Fact]
    public void Leaving_a_cell_out_by_weights_is_fitting_without_it()
    {
        var table = Club("ada", "bo", "cy");
        Conditions ada = new() { Photographer = "ada" };
        var (whole, cells) = (s_together.Fit(table).Only, s_together.Fit(table).Only.Check(0.5, ada).Cells);
        for (var left = 0; left < table.Count; left += 3)
        {
            var rest = s_together.Fit([.. table.Where((_, i) => i != left)]).Only;
            var cell = cells.Single(c => c.Cells[0].Conditions == table[left].Conditions && c.Cells[0].Exposure == table[left].Exposure);
            Assert.Equal(Tau(rest) - Tau(whole), cell.Influence!.Value.Value, 0.05);
        }

        double Tau(KeeperCurve curve) =>
            curve
                .ExposureFor(
                    0.5,
                    new()
                    {
                        Whose = Whose.This,
                        Conditions = ada,
                        CheckPriors = false,
                    }
                )
                .Exposure!.Value.Log2Seconds;
    }

    [Fact]
    public void What_the_other_speeds_expect_is_what_a_fit_of_them_predicts()
    {
        var model = s_together with { Luck = LuckKind.None };
        var table = Club("ada", "bo", "cy", "di");
        var checks = model.Fit(table).Only.Check();
        foreach (var speed in checks.Speeds)
        {
            var rest = model.Fit([.. table.Where(c => c.Exposure != speed.Seen.Exposure)]).Only;
            var rates = new[] { "ada", "bo", "cy", "di" }.Select(p =>
                rest.RateAt(
                    speed.Seen.Exposure,
                    new()
                    {
                        Whose = Whose.This,
                        Conditions = new() { Photographer = p },
                        BeyondTested = true,
                        CheckPriors = false,
                    }
                ).Rate!.Mean
            );
            Assert.Equal(rates.Average(), speed.Expected!.Value, 0.01);
        }
    }

    [Fact]
    public void Photographers_who_hardly_vary_leave_what_is_expected_and_its_chance_as_they_are_without()
    {
        var table = Club("bo");
        var tiny = s_together with
        {
            Priors = Priors.Default with
            {
                Spreads = new() { PhotographerTau = new(1e-5), PhotographerLogB = new(1e-5) },
            },
        };
        var (alone, together) = (s_alone.Fit(table).Only.Check(), tiny.Fit(table).Only.Check());
        foreach (var (one, other) in alone.Speeds.Zip(together.Speeds))
        {
            Assert.Equal(one.Expected!.Value, other.Expected!.Value, 0.015);
            Assert.Equal(one.Chance!.Value, other.Chance!.Value, 0.05);
            Assert.Equal(one.Fitted!.Value, other.Fitted!.Value, 0.01);
        }

        foreach (var (one, other) in alone.Cells.Zip(together.Cells))
        {
            Assert.Equal(one.LogPredictiveDensity!.Value, other.LogPredictiveDensity!.Value, 0.05);
            Assert.Equal(one.Leverage!.Value, other.Leverage!.Value, 0.05);
        }
    }

    [Theory]
    [InlineData(0, false)]
    [InlineData(9, true)]
    public void A_speed_that_fails_in_all_hands_is_told(int lost, bool told)
    {
        FrameTable table =
        [
            .. Club("ada", "bo", "cy", "di")
                .Select(c => new FrameCell(c.Exposure, c.Frames, c.Keepers - (c.Exposure.Log2Seconds == -6 ? Math.Min(lost, c.Keepers) : 0))
                {
                    Conditions = c.Conditions,
                }),
        ];
        var curve = s_together.Fit(table).Only;
        Assert.Equal(told, curve.Statuses.Any(s => s.Code == StatusCode.CurveDoesNotFit));
        if (told)
            Assert.Equal(-6, curve.Check().LargestGap!.Seen.Exposure.Log2Seconds);
    }

    private static FrameTable Club(params string[] photographers) =>
        [
            .. from photographer in photographers
            from x in s_speeds
            select new FrameCell(ShutterSpeed.FromLog2Seconds(x), 12, Kept(12, x, photographer))
            {
                Conditions = new() { Photographer = photographer },
            },
        ];

    private static int Kept(int frames, double x, string photographer) =>
        (int)Math.Round(frames * Elementary.Logistic(1.6 * (-5.4 + 0.4 * (photographer[0] - 'b') - x)).Mu);
}
