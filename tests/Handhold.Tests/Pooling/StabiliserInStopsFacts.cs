using Handhold.Fitting;
using Handhold.Models;

namespace Handhold.Tests.Pooling;

/// <summary>What a stabiliser buys, by photographer, in stops; far away and close up, where the rotation is not all that blurs.</summary>
public class StabiliserInStopsFacts
{
    private static KeeperModel Model { get; } =
        KeeperModel.Default with
        {
            Luck = LuckKind.None,
            Ceiling = Ceiling.One,
            Each = [],
            Varies = [new("photographer"), new("photographer") { Term = "stabiliser" }],
        };

    private static Lazy<KeeperCurve> Fitted { get; } = new(() => Model.Fit(Club()).Only);

    /// <summary>Invented: photographers half a stop apart, and their stabilisers a stop.</summary>
    private static FrameTable Club(int photographers = 4) =>
        [
            .. from j in Enumerable.Range(0, photographers)
            from mode in new[] { "off", "lens" }
            from magnification in new[] { 0, 0.5 }
            from x in new[] { -7.0, -6, -5, -4, -3, -2 }
            let half = -5 + 0.5 * j + (mode == "lens" ? 1 + j : 0) - (magnification > 0 ? 1.5 : 0)
            select new FrameCell(ShutterSpeed.FromLog2Seconds(x), 8, (int)Math.Round(8 / (1 + Math.Exp(1.6 * (x - half)))))
            {
                Conditions = With(mode, FormattableString.Invariant($"p{j}")) with { Magnification = magnification },
            },
        ];

    private static Conditions With(string mode, string? photographer = null) =>
        new() { StabiliserMode = mode, Photographer = photographer };

    private static RateEstimate Rate(Whose whose, string mode, double magnification) =>
        Fitted
            .Value.RateAt(
                ShutterSpeed.FromLog2Seconds(-4),
                new()
                {
                    Whose = whose,
                    Conditions = With(mode) with { Magnification = magnification },
                    CheckPriors = false,
                }
            )
            .Rate!;

    [Fact]
    public void Slope_and_curvature_of_what_is_integrated_are_those_of_its_height()
    {
        var rows = CurveRows.Split(Model, Club())[0];
        var moved = rows.Moved(Model);
        var spreads = LevelSpread.Of(Model, moved, rows.Data.Cells, "");
        var frames = VaryingFrames.Of(moved, spreads, rows.Data, LuckKind.None);
        Assert.Contains(frames.Levels.SelectMany(l => l), part => part.Motion is not null);
        VaryingDensity density = new(Model, moved, spreads, frames);
        var point = density.Read([.. Enumerable.Repeat(0.3, density.Dimension)]);
        var (nodes, step) = (IntegralRule.More.Finest, 1e-3);
        for (var b = 0; b < frames.Blocks.Length; b++)
        {
            var block = frames.Blocks[b];
            var (at, up, down) = (Slopes(0), Slopes(step), Slopes(-step));
            var size = at.Z.Length;
            Assert.Equal(1, size);
            Assert.Equal((at.Height(up.Z, nodes, null) - at.Height(down.Z, nodes, null)) / (2 * step), at.Gradient[0], 1e-4);
            Assert.Equal((down.Gradient[0] - up.Gradient[0]) / (2 * step), at.Curvature[0], 1e-3);

            BlockSlopes Slopes(double by)
            {
                BlockSlopes slopes = new(density.At(point), frames, density.Offsets, point.Loadings, block, density.Anchors[b]);
                slopes.Z[0] = 0.6 + by;
                slopes.Evaluate(nodes, 1e-12);
                return slopes;
            }
        }
    }

    [Fact]
    public void Benefits_that_hardly_vary_are_those_of_one_curve()
    {
        var tiny = Priors.Default with
        {
            Spreads = new() { PhotographerTau = new(1e-5), Term = new(1e-5) },
        };
        var (one, together) = ((Model with { Varies = [] }).Fit(Club()).Only, (Model with { Priors = tiny }).Fit(Club()).Only);
        foreach (var (expected, found) in one.Parameters.Zip(together.Parameters))
        {
            Assert.Equal(expected.Name, found.Name);
            Assert.Equal(0, (expected.Mean - found.Mean) / expected.StandardDeviation, 0.05);
            Assert.Equal(1, found.StandardDeviation / expected.StandardDeviation, 0.05);
        }
    }

    [Fact]
    public void Each_photographer_gains_what_is_told_of_him_and_less_close_up()
    {
        var group = Fitted.Value.Levels[1];
        var told = group.Levels.Select(l => (l.Label, Far: l.InStops[0], Close: l.InStops[1])).ToArray();
        Assert.Equal(["p0", "p1", "p2", "p3"], told.Select(t => t.Label));
        Assert.All(told, t => Assert.True(t.Close.Stops!.Value.Value < t.Far.Stops!.Value.Value));
        Assert.True(told.Zip(told.Skip(1)).All(pair => pair.First.Far.Stops!.Value.Value < pair.Second.Far.Stops!.Value.Value));
        foreach (var (label, far, _) in told)
        {
            AnswerOptions options = new()
            {
                Whose = Whose.This,
                Conditions = new() { Magnification = 0, Photographer = label },
            };
            var gained = Fitted.Value.SlowerUnder(With("lens"), With("off"), 0.5, options);
            Assert.Equal(far.Stops!.Value.Value, gained.Stops!.Value.Value, 0.01);
            Assert.Equal(far.Lower!.Value, gained.Interval!.Lower, 0.02);
        }
    }

    [Theory]
    [InlineData(0)]
    [InlineData(0.5)]
    public void New_photographers_drawn_one_by_one_average_to_the_population(double magnification)
    {
        foreach (var mode in new[] { "off", "lens" })
            Assert.Equal(Rate(Whose.NewPhotographer, mode, magnification).Mean, Rate(Whose.Population, mode, magnification).Mean, 0.01);
    }

    [Fact]
    public void Of_a_new_photographers_stabiliser_less_is_known_than_of_a_typical_ones()
    {
        Assert.True(Width(Whose.NewPhotographer) > Width(Whose.Typical));

        double Width(Whose whose)
        {
            var change = Fitted.Value.SlowerUnder(
                With("lens"),
                With("off"),
                0.5,
                new()
                {
                    Whose = whose,
                    Conditions = new() { Magnification = 0 },
                }
            );
            return change.Interval!.Upper - change.Interval.Lower;
        }
    }

    [Fact]
    public void A_saved_fit_answers_equal_to_the_last_bit()
    {
        var text = SavedFit.Write(Model.Fit(Club(2)));
        Assert.Equal(text, SavedFit.Write(SavedFit.Read(text)));
    }

    [Fact]
    public void What_cannot_be_told_is_refused_with_a_remedy()
    {
        Refused(
            "are alike in stabiliser",
            Model,
            [.. Club().Where(c => (c.Conditions.Photographer is "p0" or "p2") == (c.Conditions.StabiliserMode == "off"))]
        );
        Refused("it is no term of it", Model with { Varies = [new("photographer"), new("photographer") { Term = "focal" }] }, Club());
        FrameTable burst = [.. Club().Select(c => c with { Conditions = c.Conditions with { Session = "s", Burst = "b" } })];
        Refused("changes within bursts", Model with { Luck = LuckKind.Normal }, burst);

        static void Refused(string words, KeeperModel model, FrameTable table) =>
            Assert.Contains(words, Assert.Throws<CellException>(() => model.Fit(table)).Message, StringComparison.Ordinal);
    }
}
