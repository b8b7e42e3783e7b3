using System.Collections.Immutable;
using ScottPlot;

namespace Handhold.Plots;

/// <summary>Paragraphs above or below the data area, starting at the figure's left margin and wrapped to its width.</summary>
internal sealed class TextPanel(Edge edge, ImmutableArray<string> paragraphs, LabelStyle style, float padding) : IPanel
{
    public bool IsVisible { get; set; } = true;

    public float MinimumSize { get; set; }

    public float MaximumSize { get; set; } = float.MaxValue;

    public Edge Edge { get; } = edge;

    public bool ShowDebugInformation { get; set; }

    public LabelStyle Style { get; } = style;

    public ImmutableArray<string> Paragraphs { get; } = paragraphs;

    /// <summary>Wraps the paragraphs to a width in pixels.</summary>
    public void Fit(float width, Paint paint) =>
        Style.Text = string.Join('\n', Paragraphs.Select(p => Paragraph.Wrap(p, width, Style, paint)));

    public float Measure(Paint paint) => IsVisible && Style.Text.Length > 0 ? Style.Measure(paint).Height + (2 * padding) : 0;

    public PixelRect GetPanelRect(PixelRect dataRect, float size, float offset, Paint paint) =>
        Edge == Edge.Top
            ? new PixelRect(dataRect.Left, dataRect.Right, dataRect.Top - offset, dataRect.Top - offset - size)
            : new PixelRect(dataRect.Left, dataRect.Right, dataRect.Bottom + offset + size, dataRect.Bottom + offset);

    public void Render(RenderPack rp, float size, float offset)
    {
        if (IsVisible)
        {
            var top = GetPanelRect(rp.DataRect, size, offset, rp.Paint).Top + padding;
            Style.Render(rp.Canvas, new Pixel(rp.Layout.FigureRect.Left + PlotLayout.Margin, top), rp.Paint);
        }
    }
}
