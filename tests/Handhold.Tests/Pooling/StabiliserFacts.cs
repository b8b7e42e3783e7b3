using Handhold.Tests.Estimators;

namespace Handhold.Tests.Pooling;

/// <summary>What a stabiliser buys, by photographer, against two general mixed-model programs.</summary>
public class StabiliserFacts
{
    private const string Case = "grouped-stabiliser";
    private const double Near = 1e-3;

    private static readonly Lazy<KeeperCurve> s_rated = new(() => Model("rated").Fit(Table("rated")).Only);
    private static readonly Lazy<KeeperCurve> s_modes = new(() => Model("modes").Fit(Table("modes")).Only);

    private static FrameTable Table(string name) => PublishedTables.Table(Case, name + ".csv");

    private static KeeperCurve Curve(string name) => (name == "rated" ? s_rated : s_modes).Value;

    private static KeeperModel Model(string name) =>
        PublishedTables.Likelihood with
        {
            Each = [],
            Varies =
            [
                new("photographer", name == "rated" ? VaryingPart.Both : VaryingPart.Intercept),
                new("photographer") { Term = "stabiliser" },
            ],
        };

    private static string Theirs(string ours) =>
        ours switch
        {
            "intercept" => "(Intercept)",
            "log2Exposure" => "x",
            "stabiliser" => "stops",
            _ => ours["stabiliser=".Length..],
        };

    [Theory]
    [InlineData("rated", "lme4")]
    [InlineData("rated", "glmmTMB")]
    [InlineData("modes", "lme4")]
    [InlineData("modes", "glmmTMB")]
    public void The_fit_is_that_of_another_program(string table, string program)
    {
        var (fit, expected) = (Curve(table).Linear!, Expected.Of(Case, "fits", table, program));
        Assert.Equal(expected.GetProperty("logLikelihood").GetDouble(), fit.LogLikelihood, 1e-5);
        foreach (var coefficient in fit.Coefficients)
        {
            Assert.Equal(expected.GetProperty("beta").GetProperty(Theirs(coefficient.Name)).GetDouble(), coefficient.Estimate!.Value, Near);
            Assert.Equal(
                1,
                coefficient.StandardError!.Value / expected.GetProperty("se").GetProperty(Theirs(coefficient.Name)).GetDouble(),
                Near
            );
        }

        foreach (var spread in fit.Groups.SelectMany(g => g.Spreads))
            Assert.Equal(expected.GetProperty("spreads").GetProperty(Theirs(spread.Name)).GetDouble(), spread.Estimate!.Value, Near);
        if (table == "rated")
            Assert.Equal(expected.GetProperty("spreads").GetProperty("correlation").GetDouble(), fit.Groups[0].Correlation!.Value, Near);
    }

    [Theory]
    [InlineData("rated")]
    [InlineData("modes")]
    public void Each_photographers_effects_are_those_of_another_program(string table)
    {
        var lme4 = Expected.Of(Case, "fits", table, "lme4");
        foreach (var level in Curve(table).Linear!.Groups.SelectMany(g => g.Levels))
        foreach (var effect in level.Effects)
        {
            Assert.Equal(Of("modes"), effect.Mode, Near);
            Assert.Equal(Of("modeSds"), effect.StandardDeviation, Near);
            double Of(string what) => lme4.GetProperty(what).GetProperty(Theirs(effect.Name)).GetProperty(level.Label).GetDouble();
        }
    }

    [Fact]
    public void What_a_rated_stop_buys_a_photographer_has_the_interval_of_another_programs_joint_covariance()
    {
        var group = Curve("rated").Linear!.Groups[1];
        foreach (var (label, buys) in Expected.Of(Case, "buys").EnumerateObject().Select(p => (p.Name, p.Value)))
        {
            var stops = group.Levels.Single(l => l.Label == label).Effects.Single().InStops!;
            Assert.Equal(buys.GetProperty("point").GetDouble(), stops.Stops!.Value.Value, Near);
            Assert.Equal(buys.GetProperty("lower").GetDouble(), stops.Lower!.Value, Near);
            Assert.Equal(buys.GetProperty("upper").GetDouble(), stops.Upper!.Value, Near);
        }

        var fit = Curve("rated").Linear!;
        Assert.Equal(group.Spreads[0].Estimate!.Value / -fit.Coefficients[1].Estimate!.Value, group.InStops!.Value, 1e-9);
    }

    [Fact]
    public void Compared_with_it_and_without_it_a_photographer_gains_what_it_buys_him()
    {
        var curve = Curve("modes");
        foreach (var level in curve.Linear!.Groups[1].Levels.Take(3))
        foreach (var effect in level.Effects)
        {
            var gained = curve.SlowerUnder(
                new() { StabiliserMode = effect.Name["stabiliser=".Length..] },
                new() { StabiliserMode = "off" },
                0.5,
                new()
                {
                    Whose = Whose.This,
                    Conditions = new() { Photographer = level.Label },
                }
            );
            Assert.Equal(effect.InStops!.Stops!.Value.Value, gained.Stops!.Value.Value, 1e-9);
            Assert.Equal(effect.InStops.Lower!.Value, gained.Interval!.Lower, 1e-6);
            Assert.Equal(effect.InStops.Upper!.Value, gained.Interval.Upper, 1e-6);
        }
    }

    [Fact]
    public void A_new_photographer_is_less_known_with_it_than_without_it()
    {
        double Width(string mode)
        {
            AnswerOptions options = new()
            {
                Whose = Whose.NewPhotographer,
                Conditions = new() { StabiliserMode = mode },
            };
            var piece = Curve("modes").HalfKeeperExposure(options).Set.Pieces.Single();
            return piece.Upper!.Value - piece.Lower!.Value;
        }

        var (fit, off, lens) = (Curve("modes").Linear!, Width("off"), Width("lens"));
        var (height, buys) = (fit.Groups[0].Spreads[0].Estimate!.Value, fit.Groups[1].Spreads[1].Estimate!.Value);
        Assert.Equal("stabiliser=lens", fit.Groups[1].Spreads[1].Name);
        Assert.InRange(
            lens / off,
            0.97 * Math.Sqrt(1 + buys * buys / (height * height)),
            1.03 * Math.Sqrt(1 + buys * buys / (height * height))
        );
    }

    [Fact]
    public void One_level_of_a_term_varies_by_itself()
    {
        var model = Model("modes") with { Varies = [new("photographer"), new("photographer") { Term = "stabiliser=lens" }] };
        var curve = model.Fit(Table("modes")).Only;
        Assert.Equal(["stabiliser=lens"], curve.Linear!.Groups[1].Spreads.Select(s => s.Name));
        Assert.True(curve.LogLikelihood < Curve("modes").LogLikelihood);
        Assert.NotNull(curve.Linear.Groups[1].InStops);
        Assert.Null(Curve("modes").Linear!.Groups[1].InStops);
    }

    [Fact]
    public void A_saved_fit_knows_what_varied()
    {
        var fits = Model("rated").Fit(Table("rated"));
        var again = SavedFit.Read(SavedFit.Write(fits));
        Assert.Equal(fits.Model.Varies.Select(v => (v.Column, v.Part, v.Term)), again.Model.Varies.Select(v => (v.Column, v.Part, v.Term)));
        Assert.Equal(fits.Only.LogLikelihood, again.Only.LogLikelihood);
    }

    [Fact]
    public void What_cannot_vary_is_refused_with_a_remedy()
    {
        Varying stabiliser = new("photographer") { Term = "stabiliser" };
        Refused("Only terms are to vary", KeeperModel.Default with { Varies = [stabiliser] });
        Refused("an entry of its own", Model("rated") with { Varies = [stabiliser with { Part = VaryingPart.Both }] });
        Refused("twice in stabiliser", Model("modes") with { Varies = [stabiliser, stabiliser with { Term = "stabiliser=lens" }] });
        Refused("among the terms", Model("rated") with { Terms = ["focal"] });
        Refused("lies within other columns", Model("rated") with { Varies = [new("photographer"), stabiliser with { Within = ["club"] }] });
        Assert.Contains(
            "it is no term of it: it has stabiliser",
            Assert
                .Throws<CellException>(() =>
                    (Model("rated") with { Varies = [stabiliser with { Term = "magnification" }] }).Fit(Table("rated"))
                )
                .Message,
            StringComparison.Ordinal
        );
        FrameTable apart = [.. Table("rated").Where(c => (c.Conditions.Photographer![2] % 2 == 0) == (c.Conditions.StabiliserStops == 0))];
        Assert.Contains(
            "are alike in stabiliser",
            Assert.Throws<CellException>(() => Model("rated").Fit(apart)).Message,
            StringComparison.Ordinal
        );

        void Refused(string words, KeeperModel model) =>
            Assert.Contains(words, Assert.Throws<ArgumentException>(() => model.Fit(Table("rated"))).Message, StringComparison.Ordinal);
    }
}
