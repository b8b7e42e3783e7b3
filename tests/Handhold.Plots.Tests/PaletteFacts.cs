using ScottPlot;

namespace Handhold.Plots.Tests;

public class PaletteFacts
{
    public static TheoryData<string> Names => [.. Scenes.Names];

    /// <summary>Relative contrast of the Web Content Accessibility Guidelines 2.2; 4.5 is asked for text of ordinary size.</summary>
    [Theory, MemberData(nameof(Names))]
    public void Every_text_has_contrast_4_5_against_all_that_can_lie_behind_it(string name) =>
        Assert.All(
            [Palette.Light, Palette.Dark],
            palette =>
                Assert.All(
                    new Drawn(Scenes.Named(name) with { Palette = palette }, 600, 400).Texts,
                    text => Assert.All([palette.Paper, palette.Tested], behind => Assert.InRange(Contrast(text.ForeColor, behind), 4.5, 21))
                )
        );

    [Fact]
    public void Every_colour_of_a_series_can_carry_text() =>
        Assert.All(
            [Palette.Light, Palette.Dark],
            palette => Assert.All(palette.Series, color => Assert.InRange(Contrast(color, palette.Tested), 4.5, 21))
        );

    [Fact]
    public void Labels_may_lie_on_the_band() =>
        Assert.All(
            [Palette.Light, Palette.Dark],
            palette => Assert.All([palette.Target, palette.Curve], color => Assert.InRange(Contrast(color, palette.Band), 4.5, 21))
        );

    [Fact]
    public void Curve_target_band_and_paper_differ_in_grey()
    {
        foreach (var palette in new[] { Palette.Light, Palette.Dark })
        {
            Color[] colors = [palette.Curve, palette.Target, palette.Band, palette.Tested];
            Assert.All(colors.Zip(colors.Skip(1)), pair => Assert.InRange(Contrast(pair.First, pair.Second), 1.3, 21));
        }
    }

    /// <summary>Dichromats' view in linear RGB. Source: Viénot, Brettel and Mollon (1999), Color Research and Application 24, 243–252.</summary>
    [Theory]
    [InlineData(0.11238, 0.88762, 0.11238, 0.88762, 0.00401, -0.00401)] // protanope
    [InlineData(0.29275, 0.70725, 0.29275, 0.70725, -0.02234, 0.02234)] // deuteranope
    public void Curve_and_target_differ_for_the_colour_blind(double rr, double rg, double gr, double gg, double br, double bg)
    {
        (double Yellow, double Blue) See(Color c) =>
            (
                (0.5 * ((rr * Linear(c.R)) + (rg * Linear(c.G)))) + (0.5 * ((gr * Linear(c.R)) + (gg * Linear(c.G)))),
                (br * Linear(c.R)) + (bg * Linear(c.G)) + Linear(c.B)
            );
        foreach (var palette in new[] { Palette.Light, Palette.Dark })
        {
            // One is bluer than it is yellow, the other the reverse.
            var (curve, target) = (See(palette.Curve), See(palette.Target));
            Assert.True(curve.Blue > 1.2 * curve.Yellow);
            Assert.True(target.Yellow > 1.5 * target.Blue);
        }
    }

    internal static double Contrast(Color a, Color b)
    {
        var (x, y) = (Luminance(a), Luminance(b));
        return (Math.Max(x, y) + 0.05) / (Math.Min(x, y) + 0.05);
    }

    private static double Luminance(Color c) => (0.2126 * Linear(c.R)) + (0.7152 * Linear(c.G)) + (0.0722 * Linear(c.B));

    private static double Linear(byte channel) => channel / 255.0 is var s && s <= 0.04045 ? s / 12.92 : Math.Pow((s + 0.055) / 1.055, 2.4);
}
