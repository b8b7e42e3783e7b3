using System.Globalization;
using System.Text;
using System.Xml.Linq;
using ScottPlot;
using ScottPlot.Plottables;

namespace Handhold.Plots.Tests;

public sealed class OtherPictureFacts : IDisposable
{
    private readonly string _folder = Directory.CreateTempSubdirectory().FullName;

    public void Dispose() => Directory.Delete(_folder, recursive: true);

    public static TheoryData<string> Names => [.. OtherScenes.Names];

    public static TheoryData<string, int, int> Sizes =>
        [.. from name in OtherScenes.Names from size in new[] { (600, 400), (800, 533), (420, 320) } select (name, size.Item1, size.Item2)];

    [Theory, MemberData(nameof(Sizes))]
    public void Labels_overlap_neither_each_other_nor_points_and_stay_inside(string name, int width, int height)
    {
        Rendered drawn = new(OtherScenes.Draw(name), width, height);
        var data = drawn.Plot.LastRender.DataRect;
        var rects = drawn.Labels.Select(l => l.Rect).ToArray();
        for (var i = 0; i < rects.Length; i++)
        {
            Assert.True(
                rects[i].Left >= data.Left && rects[i].Right <= data.Right && rects[i].Top >= data.Top && rects[i].Bottom <= data.Bottom
            );
            Assert.All(rects[(i + 1)..], other => Assert.False(DirectLabels.Overlap(rects[i], other)));
            foreach (var point in drawn.Plot.PlottableList.OfType<Marker>())
            {
                Assert.False(DirectLabels.Overlap(rects[i], new PixelRect(drawn.Plot.GetPixel(point.Location), (point.Size / 2) - 0.5f)));
            }
        }
    }

    [Theory, MemberData(nameof(Names))]
    public void All_text_is_in_the_embedded_font_with_every_glyph_and_contrast_4_5_light_and_dark(string name)
    {
        foreach (var theme in new[] { PictureTheme.Light, PictureTheme.Dark })
        {
            var palette = Palette.Of(theme);
            foreach (var text in new Rendered(OtherScenes.Draw(name, theme), 600, 400).Texts.Where(t => t.Text.Length > 0))
            {
                Assert.Equal(EmbeddedFont.Family, text.Font?.FamilyName);
                Assert.DoesNotContain(text.Text.EnumerateRunes(), r => !Rune.IsControl(r) && text.Font!.GetGlyph(r.Value) == 0);
                Assert.All(
                    [palette.Paper, palette.Tested],
                    behind => Assert.InRange(PaletteFacts.Contrast(text.ForeColor, behind), 4.5, 21)
                );
            }
        }
    }

    [Theory, MemberData(nameof(Names))]
    public void An_svg_is_the_same_from_run_to_run_and_in_every_culture_and_says_what_it_shows(string name)
    {
        var first = Save("a.svg", name);
        var culture = CultureInfo.CurrentCulture;
        try
        {
            CultureInfo.CurrentCulture = new CultureInfo("de-DE");
            Assert.Equal(first, Save("b.svg", name));
        }
        finally
        {
            CultureInfo.CurrentCulture = culture;
        }

        var said = XDocument.Parse(first).Root!.Elements().Where(e => e.Name.LocalName is "title" or "desc").Select(e => e.Value);
        Assert.Equal(OtherScenes.Draw(name).AlternativeText(), string.Join('\n', said));
        Assert.Contains("What is drawn, in words.", said.Last(), StringComparison.Ordinal);
    }

    [Fact]
    public void Points_stand_to_half_a_pixel_where_the_axes_say()
    {
        int[] frames = [1, 1, 2, 5, 11];
        var scene = OtherScenes.Frames(PictureTheme.Light, frames, [], [], budget: 100);
        var plot = FramesPicture.Draw(scene);
        plot.SavePicture(Path.Combine(_folder, "a.svg"), 1200, 800);
        var circles = XDocument
            .Load(Path.Combine(_folder, "a.svg"))
            .Descendants()
            .Where(e => e.Name.LocalName is "circle" or "ellipse")
            .Select(e => (X: Number(e, "cx"), Y: Number(e, "cy")))
            .ToArray();
        var (data, limits) = (plot.LastRender.DataRect, plot.Axes.GetLimits());
        foreach (var (i, point) in scene.Series[0].Index())
        {
            var x = data.Left + ((point.Log2Seconds - limits.Left) / limits.HorizontalSpan * data.Width);
            var y = data.Bottom - ((Math.Log2(frames[i]) - limits.Bottom) / limits.VerticalSpan * data.Height);
            Assert.Contains(circles, c => Math.Abs(c.X - x) <= 0.5 && Math.Abs(c.Y - y) <= 0.5);
        }
    }

    [Fact]
    public void A_number_that_rests_on_the_priors_is_hollow_and_each_series_has_its_own_shape()
    {
        var points = OtherScenes.Draw("frames").PlottableList.OfType<Marker>().ToArray();
        Assert.Equal(
            [MarkerShape.FilledCircle, MarkerShape.FilledSquare, MarkerShape.FilledTriangleUp],
            points.Select(p => p.MarkerShape).Distinct()
        );
        Assert.Equal(
            [16.0, 30, 14, 46],
            points.Where(p => p.MarkerFillColor == Palette.Light.Tested).Select(p => Math.Round(Math.Pow(2, p.Y)))
        );
    }

    [Fact]
    public void The_support_line_stands_at_the_budget_where_some_speed_passes_it()
    {
        Rendered drawn = new(OtherScenes.Draw("frames"), 600, 400);
        Assert.Equal(Math.Log2(100), drawn.Only<LinePlot>("support").Start.Y);
        Assert.Contains("use a support: more than 100\u00A0frames", drawn.LabelTexts);
        Assert.Empty(OtherScenes.Draw("frames without a limit").PlottableList.OfType<LinePlot>());
    }

    [Fact]
    public void Every_setup_has_its_letter_on_its_line_and_its_name_and_exposure_below()
    {
        Rendered drawn = new(OtherScenes.Draw("setups"), 800, 533);
        Assert.Contains("A", drawn.LabelTexts);
        Assert.Contains("B", drawn.LabelTexts);
        Assert.Contains("A  dial 85 mm: 1/60\u00A0s", drawn.LabelTexts);
    }

    [Theory]
    [InlineData(600, 400)]
    [InlineData(800, 533)]
    public void Every_one_of_six_setups_is_named(int width, int height)
    {
        var texts = new Rendered(OtherScenes.Draw("setups, six"), width, height).LabelTexts.ToArray();
        Assert.All("ABCDEF", letter => Assert.Contains(texts, t => t.StartsWith($"{letter}  ", StringComparison.Ordinal)));
        Assert.True(width < 800 || "ABCDEF".All(letter => texts.Contains($"{letter}")));
    }

    [Fact]
    public void Every_number_of_frames_is_written_where_there_is_room() =>
        Assert.All(
            ["1", "2", "5", "10", "14", "1\u00A0keeper: 16", "2\u00A0keepers: 30", "3\u00A0keepers: 46"],
            number => Assert.Contains(number, new Rendered(OtherScenes.Draw("frames"), 800, 533).LabelTexts)
        );

    [Fact]
    public void A_change_in_stops_says_its_number_and_an_open_end_says_so()
    {
        Assert.Contains("+2.3 (+1.5 to +3.1)", new Rendered(OtherScenes.Draw("stops"), 600, 400).LabelTexts);
        Assert.Contains("open (no limit to \u22121.0)", new Rendered(OtherScenes.Draw("stops, open"), 600, 400).LabelTexts);
    }

    [Fact]
    public void Each_assurance_stands_at_its_promise_and_share_beside_the_line_where_both_agree()
    {
        Rendered drawn = new(OtherScenes.Draw("kept"), 800, 533);
        var line = Assert.Single(drawn.Plot.PlottableList.OfType<Scatter>());
        Assert.All(line.Data.GetScatterPoints(), p => Assert.Equal(p.X, p.Y));
        Assert.Equal(
            [(0.82, 0.86), (0.91, 0.93), (0.955, 0.9), (0.991, 1.0)],
            drawn.Plot.PlottableList.OfType<Marker>().Select(m => (m.X, m.Y))
        );
        Assert.All(["71 of 83", "78 of 84", "45 of 50", "27 of 27", "as promised"], words => Assert.Contains(words, drawn.LabelTexts));
    }

    [Fact]
    public void Each_day_stands_in_turn_at_its_luck_beside_the_line_of_a_usual_day()
    {
        Rendered drawn = new(OtherScenes.Draw("days"), 800, 533);
        Assert.Equal(0, drawn.Only<LinePlot>("a usual day").Start.Y);
        Assert.Equal([(0.0, -0.4), (1, 0.1), (2, 0.3)], drawn.Plot.PlottableList.OfType<Marker>().Select(m => (m.X, m.Y)));
        Assert.All(["\u22120.4", "+0.1", "+0.3", "a usual day"], words => Assert.Contains(words, drawn.LabelTexts));
    }

    [Fact]
    public void Each_speed_has_its_observed_fitted_and_expected_rate_side_by_side_and_the_farthest_says_by_how_many_points()
    {
        Rendered drawn = new(OtherScenes.Draw("fitted"), 800, 533);
        var marks = drawn.Plot.PlottableList.OfType<Marker>().ToArray();
        Assert.Equal([0.96, 0.92, 0.38, 0.71, 0.29, 0.04], At(MarkerShape.FilledCircle));
        Assert.Equal([0.94, 0.875, 0.63, 0.53, 0.245, 0.09], At(MarkerShape.FilledDiamond).Select(y => Math.Round(y, 3)));
        Assert.Equal([0.92, 0.83, 0.88, 0.35, 0.2, 0.14], At(MarkerShape.FilledSquare));
        Assert.Equal(18, marks.Select(m => m.X).Distinct().Count());
        Assert.Equal(["50 points below"], drawn.LabelTexts);
        var bars = drawn.Plot.PlottableList.OfType<LinePlot>().Where(l => l.LegendText == "interval").ToArray();
        Assert.Equal([0.76, 0.72, 0.18, 0.51, 0.09, 0], bars.Select(b => Math.Round(b.Start.Y, 9)));

        IEnumerable<double> At(MarkerShape shape) => marks.Where(m => m.MarkerShape == shape).OrderBy(m => m.X).Select(m => m.Y);
    }

    [Fact]
    public void Residuals_beyond_two_carry_their_counts_and_unreliable_ones_are_hollow()
    {
        Rendered drawn = new(OtherScenes.Draw("residuals"), 800, 533);
        var points = drawn.Plot.PlottableList.OfType<Marker>().ToArray();
        Assert.Equal([0.4, 0.9, -1.2, 0.1, -2.4, 0.8, 2.1, -0.3, 0.7, -0.6], points.Select(p => p.Y));
        Assert.Equal(10, points.Select(p => p.X).Distinct().Count());
        Assert.Equal([0.1, -0.3], points.Where(p => p.MarkerFillColor == Palette.Light.Tested).Select(p => p.Y));
        Assert.Equal(["1 of 3", "1 of 3"], drawn.LabelTexts);
        Assert.Equal([-2.0, 0, 2], drawn.Plot.PlottableList.OfType<Scatter>().Select(l => l.Data.GetScatterPoints()[0].Y).Order());
    }

    /// <summary>Writes every invented picture to a folder to look at, where HANDHOLD_LOOK names one; without it, to one that is thrown away.</summary>
    [Theory, MemberData(nameof(Names))]
    public void Every_picture_can_be_written_at_both_sizes_light_and_dark(string name)
    {
        var folder = Environment.GetEnvironmentVariable("HANDHOLD_LOOK") ?? _folder;
        foreach (var theme in new[] { PictureTheme.Light, PictureTheme.Dark })
        {
            OtherScenes.Draw(name, theme).SavePicture(Path.Combine(folder, $"{name} {theme} 1x.png"), 600, 400);
            OtherScenes.Draw(name, theme).SavePicture(Path.Combine(folder, $"{name} {theme} 2x.png"), 1200, 800);
        }
    }

    [Fact]
    public void A_sheet_holds_its_plots_side_by_side()
    {
        var path = Path.Combine(_folder, "sheet.svg");
        PictureSheet.Save([.. OtherScenes.Names.Take(5).Select(n => OtherScenes.Draw(n))], path, 2, 400, 300);
        var root = XDocument.Load(path).Root!;
        Assert.Equal("0 0 800 900", root.Attribute("viewBox")?.Value);
        PictureSheet.Save([OtherScenes.Draw("prior")], Path.Combine(_folder, "sheet.png"));
        using var png = SkiaSharp.SKBitmap.Decode(Path.Combine(_folder, "sheet.png"));
        Assert.Equal((600, 400), (png.Width, png.Height));
        Assert.Throws<ArgumentException>(() => PictureSheet.Save([], path));
    }

    private static double Number(XElement element, string name) =>
        double.Parse(element.Attribute(name)!.Value, CultureInfo.InvariantCulture);

    private string Save(string file, string name)
    {
        var path = Path.Combine(_folder, file);
        OtherScenes.Draw(name).SavePicture(path);
        return File.ReadAllText(path);
    }

    [Fact]
    public void A_title_in_stops_says_only_what_its_interval_does()
    {
        StopsRow told = new("stabiliser", 2.1, 1.2, 3.1, null);
        StopsRow open = new("first frame", -3, -7, 0.5, null);
        Assert.Equal("Stabiliser allows speeds 2.1 stops slower", StopsScene.Finding([open, told]));
        Assert.Equal("The frames tell none of these from nothing", StopsScene.Finding([open]));
        Assert.Equal("Closer takes speeds 1.0 stops faster", StopsScene.Finding([new("closer", -1, null, -0.2, null)]));
    }
}
