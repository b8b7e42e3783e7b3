using System.Net;
using ScottPlot;

namespace Handhold.Plots;

/// <summary>What a plot shows, in sentences; it draws nothing.</summary>
internal sealed class Spoken(string words) : IPlottable
{
    public string Words { get; } = words;

    public bool IsVisible { get; set; } = true;

    public IAxes Axes { get; set; } = new Axes();

    public IEnumerable<LegendItem> LegendItems => [];

    public AxisLimits GetAxisLimits() => AxisLimits.NoLimits;

    public void Render(RenderPack rp) { }

    /// <summary>The first line as an SVG's title, the others as its description.</summary>
    public static string Svg(string words)
    {
        var lines = words.Split('\n', 2);
        return $"<title>{WebUtility.HtmlEncode(lines[0])}</title>"
            + (lines.Length > 1 ? $"<desc>{WebUtility.HtmlEncode(lines[1])}</desc>" : "");
    }
}
