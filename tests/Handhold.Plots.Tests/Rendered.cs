using System.Collections.Immutable;
using ScottPlot;

namespace Handhold.Plots.Tests;

/// <summary>A plot drawn at a size, and what came of it.</summary>
internal class Rendered
{
    public Rendered(Plot plot, int width, int height)
    {
        Plot = plot;
        using var image = Plot.GetImage(width, height);
        using var paint = Paint.NewDisposablePaint();
        Labels = Plot.PlottableList.OfType<DirectLabels>().Single().Place(Plot.LastRender.DataRect, paint);
    }

    public Plot Plot { get; }

    public ImmutableArray<(DirectLabel Label, LabelSpot Spot, PixelRect Rect)> Labels { get; }

    public IEnumerable<string> LabelTexts => Labels.Select(l => l.Label.Style.Text);

    public T Only<T>(string name)
        where T : class, IPlottable, IHasLegendText => Plot.PlottableList.OfType<T>().Single(p => p.LegendText == name);

    /// <summary>Every style that text is drawn with, its text included.</summary>
    public IEnumerable<LabelStyle> Texts =>
        Plot
            .Axes.GetAxes()
            .SelectMany(a =>
                new[] { a.Label }.Concat(
                    a.TickGenerator.Ticks.Select(t => new LabelStyle
                    {
                        Text = t.Label,
                        Font = a.TickLabelStyle.Font,
                        ForeColor = a.TickLabelStyle.ForeColor,
                    })
                )
            )
            .Append(Plot.Axes.Title.Label)
            .Concat(Plot.Axes.GetPanels().OfType<TextPanel>().Select(p => p.Style))
            .Concat(Labels.Select(l => l.Label.Style));
}
