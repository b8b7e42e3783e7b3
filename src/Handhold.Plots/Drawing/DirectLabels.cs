using System.Collections.Immutable;
using ScottPlot;

namespace Handhold.Plots;

/// <summary>Texts beside what they name. At each render every text takes its first free spot; a text without one is left out.</summary>
internal sealed class DirectLabels(ImmutableArray<DirectLabel> labels, ImmutableArray<Obstacle> obstacles) : IPlottable
{
    private const float EdgeGap = 3;
    private const float TextGap = 5;

    public bool IsVisible { get; set; } = true;

    public IAxes Axes { get; set; } = new Axes();

    public IEnumerable<LegendItem> LegendItems => [];

    public AxisLimits GetAxisLimits() => AxisLimits.NoLimits;

    public void Render(RenderPack rp)
    {
        foreach (var (label, spot, _) in Place(rp.DataRect, rp.Paint))
        {
            label.Style.Alignment = spot.Alignment;
            label.Style.Render(rp.Canvas, Point(spot), rp.Paint);
        }
    }

    /// <summary>The texts that find a spot, in order, with the rectangle that each covers.</summary>
    public ImmutableArray<(DirectLabel Label, LabelSpot Spot, PixelRect Rect)> Place(PixelRect dataRect, Paint paint)
    {
        var free = dataRect.Contract(EdgeGap);
        var taken = obstacles.Select(o => Axes.GetPixelRect(o.Rect).Expand(o.Margin)).ToList();
        var placed = ImmutableArray.CreateBuilder<(DirectLabel, LabelSpot, PixelRect)>();
        foreach (var label in labels)
        {
            var text = label.Style.Measure(paint);
            foreach (var spot in label.Spots)
            {
                var point = Point(spot);
                var rect = text.Rect(spot.Alignment).WithDelta(point.X, point.Y);
                if (IsInside(rect, free.Intersect(Axes.GetPixelRect(label.Room))) && !taken.Exists(t => Overlap(rect, t)))
                {
                    placed.Add((label, spot, rect));
                    taken.Add(rect.Expand(new PixelPadding(TextGap, TextGap, 0, 0)));
                    break;
                }
            }
        }

        return placed.ToImmutable();
    }

    internal static bool Overlap(PixelRect a, PixelRect b) => a.Left < b.Right && b.Left < a.Right && a.Top < b.Bottom && b.Top < a.Bottom;

    private static bool IsInside(PixelRect rect, PixelRect room) =>
        rect.Left >= room.Left && rect.Right <= room.Right && rect.Top >= room.Top && rect.Bottom <= room.Bottom;

    private Pixel Point(LabelSpot spot)
    {
        var right = 0.5f - spot.Alignment.HorizontalFraction();
        var up = 0.5f - spot.Alignment.VerticalFraction();
        var at = Axes.GetPixel(new Coordinates(spot.Log2Seconds, spot.Rate));
        return new Pixel(at.X + (2 * right * spot.Gap), at.Y - (2 * up * spot.Gap));
    }
}
