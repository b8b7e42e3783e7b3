using System.Text;

namespace Handhold.Plots.Tests;

public class TextFacts
{
    public static TheoryData<string> Names => [.. Scenes.Names];

    [Theory, MemberData(nameof(Names))]
    public void All_text_is_in_the_embedded_font_which_has_every_glyph(string name)
    {
        Drawn drawn = new(Scenes.Named(name), 600, 400);
        Assert.All(drawn.Texts, t => Assert.Equal(EmbeddedFont.Family, t.Font?.FamilyName));
        Assert.All(
            drawn.Texts,
            t => Assert.DoesNotContain(t.Text.EnumerateRunes(), r => !Rune.IsControl(r) && t.Font!.GetGlyph(r.Value) == 0)
        );
    }

    [Theory]
    [InlineData("Robin · Zoë · Łukasz · Ålesund")]
    [InlineData("Мария · Ελένη")]
    [InlineData("½ µm × ± ≤ ≥ σ τ ρ β \u2212 – — ’ “ ” … °")]
    public void Names_in_Latin_Greek_and_Cyrillic_and_the_signs_of_the_trade_need_no_other_font(string text) =>
        Assert.Equal(EmbeddedFont.Family, new EmbeddedFont().For(text, bold: false).FamilyName);

    [Fact]
    public void Text_in_another_script_is_drawn_in_whatever_the_machine_has()
    {
        Drawn drawn = new(Scenes.Named("ordinary") with { Subject = "\u6642\u8a08 \u0627\u0644\u0633\u0627\u0639\u0629" }, 600, 400);
        Assert.NotNull(drawn.Plot.Axes.GetPanels().OfType<TextPanel>().First().Style.Font);
        Assert.Equal(EmbeddedFont.Family, drawn.Plot.Axes.Title.Label.Font?.FamilyName);
    }

    [Fact]
    public void The_title_is_bold_and_the_rest_is_not()
    {
        Drawn drawn = new(Scenes.Named("ordinary"), 600, 400);
        Assert.True(drawn.Plot.Axes.Title.Label.Font!.FontWeight > drawn.Plot.Axes.Bottom.Label.Font!.FontWeight);
    }

    [Fact]
    public void Drawing_leaves_the_font_settings_of_other_plots_alone()
    {
        var before = (ScottPlot.Fonts.Default, ScottPlot.Fonts.DefaultFontStyle, ScottPlot.Fonts.FontResolvers.Count);
        _ = new Drawn(Scenes.Named("ordinary"), 600, 400);
        Assert.Equal(before, (ScottPlot.Fonts.Default, ScottPlot.Fonts.DefaultFontStyle, ScottPlot.Fonts.FontResolvers.Count));
    }

    [Theory]
    [InlineData(250)]
    [InlineData(400)]
    [InlineData(1600)]
    public void Title_and_captions_stay_within_the_figure(int width)
    {
        Drawn drawn = new(Scenes.Named("not reachable"), width, 500);
        using var paint = ScottPlot.Paint.NewDisposablePaint();
        Assert.InRange(drawn.Plot.Axes.Title.Label.Measure(paint).Width, 1, width - (2 * PlotLayout.Margin));
        Assert.All(
            drawn.Plot.Axes.GetPanels().OfType<TextPanel>(),
            p => Assert.InRange(p.Style.Measure(paint).Width, 1, width - (2 * PlotLayout.Margin))
        );
    }

    [Fact]
    public void Without_a_splitting_column_there_is_no_line_for_one() =>
        Assert.Single(new Drawn(Scenes.Named("one speed"), 600, 400).Plot.Axes.GetPanels().OfType<TextPanel>());
}
