using ScottPlot;
using static Handhold.ShutterSpeed;

namespace Handhold.Plots.Tests;

public class SpeedAxisFacts
{
    [Fact]
    public void Full_stops_are_labelled_as_cameras_mark_them_and_stand_where_the_mark_says()
    {
        var majors = Ticks("ordinary", 1200).Where(t => t.IsMajor).ToArray();
        Assert.Equal(["1/250", "1/125", "1/60", "1/30", "1/15", "1/8", "1/4", "0.5"], majors.Select(t => t.Label));
        double[] denominators = [250, 125, 60, 30, 15, 8, 4, 2];
        Assert.Equal(denominators.Select(d => OneOver(d).Log2Seconds), majors.Select(t => t.Position));
    }

    [Fact]
    public void Thirds_of_a_stop_are_small_ticks_without_labels()
    {
        var minors = Ticks("narrow", 600).Where(t => !t.IsMajor).ToArray();
        Assert.Contains(OneOver(50).Log2Seconds, minors.Select(t => t.Position));
        Assert.Contains(OneOver(40).Log2Seconds, minors.Select(t => t.Position));
        Assert.All(minors, t => Assert.Equal("", t.Label));
    }

    [Fact]
    public void A_camera_of_full_stops_has_no_small_ticks() =>
        Assert.All(
            new Drawn(Scenes.Named("ordinary") with { Marks = Marks.Full }, 600, 400).Plot.Axes.Bottom.TickGenerator.Ticks,
            t => Assert.True(t.IsMajor)
        );

    public static TheoryData<string, int> NamesAndWidths =>
        [.. from name in Scenes.Names from width in new[] { 250, 400, 600, 800, 1600 } select (name, width)];

    [Theory, MemberData(nameof(NamesAndWidths))]
    public void Labels_never_touch(string name, int width)
    {
        var axis = new Drawn(Scenes.Named(name), width, 400).Plot.Axes.Bottom;
        using var paint = Paint.NewDisposablePaint();
        var drawn = axis.TickGenerator.Ticks.Where(t => t.Label.Length > 0).ToArray();
        var ends = drawn
            .Select(t =>
                (Middle: axis.GetPixel(t.Position, new PixelRect(0, width - 90, 0, 1)), axis.TickLabelStyle.Measure(t.Label, paint).Width)
            )
            .ToArray();
        Assert.NotEmpty(drawn);
        Assert.All(
            ends.Zip(ends.Skip(1)),
            pair => Assert.True(pair.First.Middle + (pair.First.Width / 2) + 2 < pair.Second.Middle - (pair.Second.Width / 2))
        );
    }

    [Fact]
    public void Rates_are_labelled_in_percent_from_0_to_100()
    {
        var ticks = new Drawn(Scenes.Named("ordinary"), 600, 400).Plot.Axes.Left.TickGenerator.Ticks;
        Assert.Equal([0, 0.2, 0.4, 0.6, 0.8, 1], ticks.Select(t => t.Position));
        Assert.Equal(["0\u00a0%", "20\u00a0%", "40\u00a0%", "60\u00a0%", "80\u00a0%", "100\u00a0%"], ticks.Select(t => t.Label));
    }

    private static Tick[] Ticks(string name, int width) => new Drawn(Scenes.Named(name), width, 400).Plot.Axes.Bottom.TickGenerator.Ticks;
}
