using FsCheck.Xunit;
using ScottPlot;

namespace Handhold.Plots.Tests;

public class DirectLabelFacts
{
    public static TheoryData<string, int, int> Pictures => Sizes((600, 400), (800, 533), (1000, 500), (420, 320), (250, 200));

    public static TheoryData<string, int, int> OrdinaryPictures => Sizes((600, 400), (800, 533), (1000, 500), (500, 500));

    [Theory, MemberData(nameof(Pictures))]
    public void Labels_overlap_neither_each_other_nor_marks_and_stay_inside(string name, int width, int height) =>
        CheckLabels(new Drawn(Scenes.Named(name), width, height));

    [Theory, MemberData(nameof(OrdinaryPictures))]
    public void Target_and_curve_are_always_named(string name, int width, int height)
    {
        Drawn drawn = new(Scenes.Named(name), width, height);
        Assert.Contains(CurveWords.Target(drawn.Scene.Target, 0.95, Marks.Third), drawn.LabelTexts);
        Assert.Contains("median and 95\u00A0% band", drawn.LabelTexts);
    }

    [Fact]
    public void Counts_stand_above_their_dots()
    {
        Drawn drawn = new(Scenes.Named("ordinary"), 600, 400);
        Assert.Equal(["6 of 6", "6 of 6", "5 of 6", "4 of 6", "2 of 8", "0 of 4"], drawn.LabelTexts.Take(6));
        Assert.Equal(drawn.Scene.Observed.Select(o => o.Log2Seconds), drawn.Labels.Take(6).Select(l => l.Spot.Log2Seconds));
    }

    [Property(Replay = "(2025,131)", MaxTest = 60)]
    public void Any_counts_can_be_drawn(byte speeds, byte frames, byte keepers, byte half, byte target)
    {
        var counts = Enumerable
            .Range(0, 1 + (speeds % 12))
            .Select(i => (Math.Pow(2, 12 - i), 1 + (frames % 50), Math.Min(1 + (frames % 50), (keepers + i) % 51)));
        var scene = Scenes.Make((1 + (target % 99)) / 100.0, -12 + (half / 20.0), 1.5, 0.9, 0.1 + (half / 100.0), [.. counts]);
        CheckLabels(new Drawn(scene, 600, 400));
    }

    private static TheoryData<string, int, int> Sizes(params (int Width, int Height)[] sizes) =>
        [.. from name in Scenes.Names from size in sizes select (name, size.Width, size.Height)];

    private static void CheckLabels(Drawn drawn)
    {
        var rects = drawn.Labels.Select(l => l.Rect).ToArray();
        var axes = (drawn.Plot.Axes.Bottom, drawn.Plot.Axes.Left);
        var data = drawn.Plot.LastRender.DataRect;
        for (var i = 0; i < rects.Length; i++)
        {
            Assert.True(
                rects[i].Left >= data.Left && rects[i].Right <= data.Right && rects[i].Top >= data.Top && rects[i].Bottom <= data.Bottom
            );
            Assert.All(rects[(i + 1)..], other => Assert.False(DirectLabels.Overlap(rects[i], other)));
            foreach (var dot in drawn.Dots)
            {
                var (x, y) = (axes.Bottom.GetPixel(dot.X, data), axes.Left.GetPixel(dot.Y, data));
                Assert.False(DirectLabels.Overlap(rects[i], new PixelRect(new Pixel(x, y), (dot.Size / 2) - 0.5f)));
            }
        }
    }
}
