using static Handhold.ShutterSpeed;

namespace Handhold.Tests.Models;

public class TermFacts
{
    private static KeeperModel Likelihood { get; } = KeeperModel.Default with { Estimator = Estimator.Likelihood };

    /// <summary>Two speeds with keepers and rejects at each, under every one of some conditions.</summary>
    private static FrameTable Under(params Conditions[] all) =>
        [
            .. from conditions in all
            from cell in new[] { (Speed: OneOver(60), Keepers: 5), (Speed: OneOver(30), Keepers: 3), (Speed: OneOver(15), Keepers: 1) }
            select new FrameCell(cell.Speed, 6, cell.Keepers) { Conditions = conditions },
        ];

    private static string[] Columns(KeeperModel model, FrameTable table) =>
        [.. model.Fit(table).Only.Linear!.Coefficients.Select(c => c.Name)];

    private static Conditions With(string column, string value) => Conditions.None.With(column, value);

    [Fact]
    public void Numbers_enter_as_they_are_and_text_as_levels_against_the_first_in_byte_order()
    {
        var text = Under(With("grip", "b"), With("grip", "a"), With("grip", "B"));
        Assert.Equal(["intercept", "log2Exposure", "grip=a", "grip=b"], Columns(Likelihood with { Terms = ["grip"] }, text));
        var numbers = Under(With("grip", "1"), With("grip", "2.5"), With("grip", "10"));
        Assert.Equal(["intercept", "log2Exposure", "grip"], Columns(Likelihood with { Terms = ["grip"] }, numbers));
    }

    [Fact]
    public void Products_are_named_by_their_columns() =>
        Assert.Equal(
            ["intercept", "log2Exposure", "grip=b", "log2Exposure×grip=b"],
            Columns(Likelihood with { Terms = ["grip"], Products = [new("grip", "exposure")] }, Under(With("grip", "a"), With("grip", "b")))
        );

    [Fact]
    public void Without_terms_the_built_in_ones_that_vary_are_used()
    {
        var table = Under(
            new()
            {
                EquivalentFocalLength = 50,
                StabiliserMode = "off",
                SubjectMotion = "still",
            },
            new()
            {
                EquivalentFocalLength = 200,
                StabiliserMode = "off",
                SubjectMotion = "still",
            },
            new()
            {
                EquivalentFocalLength = 50,
                StabiliserMode = "body",
                SubjectMotion = "still",
            }
        );
        Assert.Equal(["intercept", "log2Exposure", "focal", "stabiliser=body"], Columns(Likelihood, table));
        Assert.Equal(["intercept", "log2Exposure"], Columns(Likelihood with { PoolConditions = true }, table));
        Assert.Contains(Likelihood.Fit(table).Only.Statuses, s => s.Code == StatusCode.Approximate);
    }

    [Fact]
    public void Stabiliser_and_magnification_come_with_their_product_where_the_frames_can_tell_it()
    {
        Conditions[] all =
        [
            .. from mode in new[] { "off", "lens" }
            from magnification in new[] { 0.0, 1.0 }
            select new Conditions { StabiliserMode = mode, Magnification = magnification },
        ];
        Assert.Contains("stabiliser=lens×magnification", Columns(Likelihood, Under(all)));
        Assert.DoesNotContain("stabiliser=lens×magnification", Columns(Likelihood, Under(all[..3])));
    }

    [Fact]
    public void A_doubled_focal_length_costs_the_stops_that_it_was_made_to_cost()
    {
        FrameTable table =
        [
            .. from doublings in new[] { 0, 1, 2 }
            from x in Enumerable.Range(-8, 7)
            let rate = 1 / (1 + Math.Exp(1.6 * (x + 5 + 1.1 * doublings)))
            select new FrameCell(FromLog2Seconds(x), 1_000_000, (int)Math.Round(1_000_000 * rate))
            {
                Conditions = new() { EquivalentFocalLength = 50 << doublings },
            },
        ];
        var effect = Assert.Single(Likelihood.Fit(table).Only.Linear!.InStops);
        Assert.Equal("focal", effect.Term);
        Assert.Equal(-1.1, effect.Stops!.Value.Value, 1e-4);
        Assert.InRange(-1.1, effect.Lower!.Value, effect.Upper!.Value);
    }

    [Fact]
    public void A_curve_of_its_own_or_a_term_the_default_split_gives_way_to_terms()
    {
        var table = Under(With("setup", "a"), With("setup", "b"));
        Assert.Equal(2, Likelihood.Fit(table).Count);
        Assert.Contains("setup=b", Columns(Likelihood with { Terms = ["setup"] }, table));
    }

    [Fact]
    public void A_term_that_does_not_vary_or_is_not_recorded_is_refused_by_name()
    {
        var model = Likelihood with { Terms = ["grip"] };
        var constant = Assert.Throws<CellException>(() => model.Fit(Under(With("grip", "a"))));
        Assert.Contains("grip is a in all", constant.Message, StringComparison.Ordinal);
        var lacking = Assert.Throws<CellException>(() => model.Fit(Under(With("grip", "a"), Conditions.None)));
        Assert.Contains("have no grip", lacking.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void Terms_that_go_together_are_refused_naming_both()
    {
        var table = Under(With("grip", "a").With("strap", "x"), With("grip", "b").With("strap", "y"));
        var aliased = Assert.Throws<CellException>(() => (Likelihood with { Terms = ["grip", "strap"] }).Fit(table));
        Assert.Contains("grip=b", aliased.Message, StringComparison.Ordinal);
        Assert.Contains("strap=y", aliased.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void Frames_that_differ_in_what_no_term_explains_are_refused() =>
        Assert.Contains(
            "subject_speed_mm_s",
            Assert
                .Throws<CellException>(() =>
                    Likelihood.Fit(Under(new Conditions { SubjectSpeed = 10 }, new Conditions { SubjectSpeed = 20 }))
                )
                .Message,
            StringComparison.Ordinal
        );

    [Theory]
    [InlineData("the order of rows")]
    [InlineData("frames one by one")]
    public void What_does_not_matter_changes_no_estimate(string what)
    {
        var table = Under(With("grip", "a"), With("grip", "b"), With("grip", "c"));
        FrameTable other =
            what == "the order of rows"
                ? [.. table.Reverse()]
                :
                [
                    .. from cell in table
                    from frame in Enumerable.Range(0, cell.Frames)
                    select new FrameCell(cell.Exposure, 1, frame < cell.Keepers ? 1 : 0) { Conditions = cell.Conditions },
                ];
        var model = Likelihood with { Terms = ["grip"] };
        var (one, two) = (model.Fit(table).Only, model.Fit(other).Only);
        Assert.Equal(one.Linear!.Coefficients.Select(c => c.Estimate), two.Linear!.Coefficients.Select(c => c.Estimate));
        Assert.Equal((one.LogLikelihood, one.Deviance), (two.LogLikelihood, two.Deviance));
    }
}
