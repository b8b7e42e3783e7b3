using ScottPlot;
using ScottPlot.Plottables;

namespace Handhold.Plots.Tests;

public class DrawingFacts
{
    public static TheoryData<string> Names => [.. Scenes.Names];

    [Theory, MemberData(nameof(Names))]
    public void Curve_and_band_are_drawn_where_the_curve_answered(string name)
    {
        Drawn drawn = new(Scenes.Named(name), 600, 400);
        var points = drawn.Only<Scatter>("median").Data.GetScatterPoints();
        Assert.Equal(drawn.Scene.Log2Seconds, points.Select(p => p.X));
        Assert.Equal(drawn.Scene.Median, points.Select(p => p.Y));
        var band = drawn.Only<FillY>("band").GetAxisLimits();
        Assert.Equal(drawn.Scene.Lower.Min(), band.Bottom);
        Assert.Equal(drawn.Scene.Upper.Max(), band.Top);
    }

    [Theory, MemberData(nameof(Names))]
    public void Observed_rates_have_dots_in_proportion_to_their_frames_and_bars_over_their_intervals(string name)
    {
        Drawn drawn = new(Scenes.Named(name), 600, 400);
        var observed = drawn.Scene.Observed;
        Assert.Equal(observed.Select(o => (o.Log2Seconds, o.Rate)), drawn.Dots.Select(d => (d.X, d.Y)));
        var areaAFrame = drawn.Dots.First().Size * drawn.Dots.First().Size / observed[0].Frames;
        Assert.All(
            drawn.Dots.Zip(observed),
            pair => Assert.Equal(areaAFrame * pair.Second.Frames, pair.First.Size * pair.First.Size, 0.01f)
        );
        Assert.All(drawn.Dots, d => Assert.InRange(d.Size, 1, 18.01f));

        var bars = drawn.Only<ErrorBar>("observed");
        for (var i = 0; i < observed.Length; i++)
        {
            Assert.Equal(observed[i].Upper, bars.Ys[i] + bars.YErrorPositive![i], 1e-12);
            Assert.Equal(observed[i].Lower, bars.Ys[i] - bars.YErrorNegative![i], 1e-12);
        }
    }

    [Fact]
    public void The_target_is_a_line_with_the_exposures_that_have_it_on_it()
    {
        Drawn drawn = new(Scenes.Named("high target"), 600, 400);
        Assert.Equal(0.8, drawn.Only<HorizontalLine>("target").Y);
        var bar = drawn.Only<LinePlot>("exposures for the target");
        var (lower, upper) = drawn.Scene.Target.Pieces.Single();
        Assert.Equal((lower, upper, 0.8, 0.8), (bar.Start.X, bar.End.X, bar.Start.Y, bar.End.Y));
        var diamond = drawn.Plot.PlottableList.OfType<Marker>().Single(m => m.MarkerShape == MarkerShape.FilledDiamond);
        Assert.Equal((drawn.Scene.Target.Log2Seconds, 0.8), (diamond.X, diamond.Y));
    }

    [Fact]
    public void An_unbounded_piece_reaches_the_edge_and_two_pieces_are_two_bars()
    {
        var scene = Scenes.Named("ordinary");
        var wide = scene with { Target = scene.Target with { Pieces = [(null, -6), (-4, null)] } };
        var bars = new Drawn(wide, 600, 400).Plot.PlottableList.OfType<LinePlot>().Where(l => l.LegendText.Length > 0).ToArray();
        Assert.Equal([(scene.Log2Seconds[0], -6.0), (-4.0, scene.Log2Seconds[^1])], bars.Select(b => (b.Start.X, b.End.X)));
    }

    [Theory]
    [InlineData("not reachable", "80\u00a0%: probably not reachable at any speed")]
    [InlineData("all keepers", "50\u00a0%: not within the speeds tested")]
    public void A_target_without_an_exposure_has_no_bar_and_says_so(string name, string words)
    {
        Drawn drawn = new(Scenes.Named(name), 600, 400);
        Assert.Empty(drawn.Plot.PlottableList.OfType<LinePlot>());
        Assert.Contains(words, drawn.LabelTexts);
    }

    [Fact]
    public void What_was_not_tested_is_veiled_on_both_sides()
    {
        Drawn drawn = new(Scenes.Named("ordinary"), 600, 400);
        var veils = drawn.Plot.PlottableList.OfType<HorizontalSpan>().ToArray();
        Assert.Equal((drawn.Scene.Fastest, drawn.Scene.Slowest), (veils[0].X2, veils[1].X1));
        Assert.Equal(2, drawn.LabelTexts.Count(t => t == "not tested"));
    }

    [Fact]
    public void Every_speed_tested_and_the_target_are_in_view() =>
        Assert.All(
            Scenes.Names.Select(Scenes.Named),
            scene =>
            {
                var limits = new Drawn(scene, 600, 400).Plot.Axes.GetLimits();
                Assert.All(
                    scene.Observed,
                    o => Assert.True(limits.Contains(o.Log2Seconds, o.Lower) && limits.Contains(o.Log2Seconds, o.Upper))
                );
                Assert.InRange(scene.Target.Log2Seconds ?? scene.Slowest, limits.Left, limits.Right);
            }
        );

    [Fact]
    public void The_ceiling_is_drawn_only_where_asked_for()
    {
        Assert.Equal(0.65, new Drawn(Scenes.Named("not reachable"), 600, 400).Only<HorizontalLine>("ceiling").Y);
        Assert.DoesNotContain(
            new Drawn(Scenes.Named("ordinary"), 600, 400).Plot.PlottableList.OfType<HorizontalLine>(),
            l => l.LegendText == "ceiling"
        );
    }

    [Fact]
    public void The_plot_can_be_restyled_and_drawn_again_at_another_size()
    {
        Drawn drawn = new(Scenes.Named("ordinary"), 600, 400);
        drawn.Plot.Title("A title of the embedder's own that is far too long for one line of a picture that is four hundred pixels wide");
        drawn.Only<Scatter>("median").Color = Colors.Black;
        using var image = drawn.Plot.GetImage(400, 400);
        using var paint = Paint.NewDisposablePaint();
        var title = drawn.Plot.Axes.Title.Label;
        Assert.Contains('\n', title.Text);
        Assert.InRange(title.Measure(paint).Width, 100, 400 - (2 * PlotLayout.Margin));
    }
}
