using Handhold.Tests.Estimators;

namespace Handhold.Tests.Pooling;

/// <summary>Stops between levels of a likelihood.</summary>
public class LevelDifferenceFacts
{
    private static StopsDifference Between(KeeperCurve curve, string a, string b, Whose whose = Whose.This) =>
        curve.SlowerUnder(
            new() { Photographer = b },
            new() { Photographer = a },
            0.5,
            new() { Whose = whose, Conditions = whose == Whose.This ? new() { Setup = "s1" } : Conditions.None }
        );

    [Theory]
    [InlineData("nested")]
    [InlineData("nestedBoth")]
    public void Differences_and_their_intervals_are_those_of_another_programs_joint_covariance(string structure)
    {
        foreach (var expected in Expected.Of("grouped-differences", "differences", structure).EnumerateArray())
        {
            var found = Between(Groups.Curve(structure), expected.GetProperty("a").GetString()!, expected.GetProperty("b").GetString()!);
            Assert.Equal(expected.GetProperty("stops").GetDouble(), found.Stops!.Value.Value, 1e-4);
            Assert.Equal(expected.GetProperty("lower").GetDouble(), found.Interval!.Lower, 1e-3);
            Assert.Equal(expected.GetProperty("upper").GetDouble(), found.Interval.Upper, 1e-3);
            Assert.Equal(0.975, found.ProbabilityBetterBy(new(found.Interval.Lower))!.Value, 1e-6);
            Assert.Equal("fieller", Assert.IsType<ConfidenceInterval>(found.Interval).Method);
        }
    }

    [Fact]
    public void What_is_drawn_anew_on_both_sides_drops_out()
    {
        var curve = Groups.Curve("nested");
        var (fit, levels) = (curve.Linear!, curve.Linear!.Groups[0].Levels);
        var (a, b) = (levels.Single(l => l.Label == "p05"), levels.Single(l => l.Label == "p11"));
        var found = Between(curve, "p05", "p11", Whose.NewSetup);
        Assert.Equal((b.Effects[0].Mode - a.Effects[0].Mode) / -fit.Coefficients[1].Estimate!.Value, found.Stops!.Value.Value, 1e-8);
        // Each photographer's effect is told to within its sd; the spread of new setups, as large, is not in it.
        var known = 1.96 * Math.Sqrt(2) * a.Effects[0].StandardDeviation / -fit.Coefficients[1].Estimate!.Value;
        Assert.InRange((found.Interval!.Upper - found.Interval.Lower) / 2, 0.9 * known, 1.1 * known);
    }

    [Fact]
    public void Sides_of_two_fits_add_their_doubt()
    {
        var curves = (Groups.Model("slope") with { Each = ["setup"], Varies = [new("photographer", VaryingPart.Both)] }).Fit(Groups.Table);
        AnswerOptions options = new()
        {
            Whose = Whose.This,
            Conditions = new() { Photographer = "p05" },
            Intervals = IntervalMethod.Fieller,
        };
        var found = curves[1].SlowerThan(curves[0], 0.5, options);
        double[] halves =
        [
            .. curves.Take(2).Select(c => c.HalfKeeperExposure(options).Set.Pieces[0]).Select(p => (p.Upper!.Value - p.Lower!.Value) / 2),
        ];
        Assert.Equal(
            1,
            (found.Interval!.Upper - found.Interval.Lower) / 2 / Math.Sqrt(halves[0] * halves[0] + halves[1] * halves[1]),
            0.02
        );
    }

    [Fact]
    public void Levels_without_a_spread_are_as_good_as_each_other()
    {
        FrameTable table =
        [
            .. from photographer in new[] { "a", "b", "c" }
            from shot in new[] { (60, 9), (30, 7), (15, 4), (8, 1) }
            select new FrameCell(ShutterSpeed.OneOver(shot.Item1), 10, shot.Item2) { Conditions = new() { Photographer = photographer } },
        ];
        var curve = (PublishedTables.Likelihood with { Each = [], Varies = [new("photographer")] }).Fit(table).Only;
        var found = curve.SlowerUnder(new() { Photographer = "b" }, new() { Photographer = "a" }, 0.5, new() { Whose = Whose.This });
        Assert.Equal((0, 0.5), (found.Stops!.Value.Value, found.ProbabilityBetter));
        Assert.Contains(found.Statuses, s => s.Code == StatusCode.NoGroupSpread);
    }

    [Theory]
    [InlineData(Whose.Typical, "typical")]
    [InlineData(Whose.NewPhotographer, "new")]
    [InlineData(Whose.Population, "new")]
    public void Levels_that_are_not_those_meant_are_not_compared(Whose whose, string word)
    {
        var refused = Assert.Throws<ConditionsException>(() => Between(Groups.Curve("nested"), "p05", "p11", whose));
        Assert.Contains(word, refused.Message, StringComparison.Ordinal);
        Assert.Contains("this one", refused.Message, StringComparison.Ordinal);
    }
}
