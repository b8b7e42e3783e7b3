using ScottPlot;
using ScottPlot.LayoutEngines;

namespace Handhold.Plots;

/// <summary>ScottPlot's automatic layout, with title and text panels wrapped to the figure first, all starting at one left margin.</summary>
internal sealed class PlotLayout : ILayoutEngine
{
    /// <summary>Free space left and right of text, in pixels.</summary>
    public const float Margin = 12;

    private readonly Automatic _automatic = new();

    public Layout GetLayout(PixelRect figureRect, Plot plot, Paint paint)
    {
        var width = figureRect.Width - (2 * Margin);
        var title = plot.Axes.Title.Label;
        title.Text = Paragraph.Wrap(title.Text, width, title, paint);
        foreach (var panel in plot.Axes.GetPanels().OfType<TextPanel>())
        {
            panel.Fit(width, paint);
        }

        var layout = _automatic.GetLayout(figureRect, plot, paint);
        title.OffsetX = figureRect.Left + Margin - layout.DataRect.HorizontalCenter;
        return layout;
    }
}
