using System.Text;
using ScottPlot;
using SkiaSharp;

namespace Handhold.Plots;

/// <summary>Several plots side by side in one picture: small multiples.</summary>
public static class PictureSheet
{
    /// <summary>Writes plots in rows of equal cells to a PNG or an SVG, chosen by the file's extension; the file appears whole or not at all.</summary>
    /// <remarks>Text and lines grow with a cell's size as those of a picture do.</remarks>
    /// <param name="plots">The plots, at least one, row by row.</param>
    /// <param name="path">File name that ends in <c>.png</c> or <c>.svg</c>; an existing file is replaced.</param>
    /// <param name="columns">Plots in a row, 1 to 10.</param>
    /// <param name="width">Width of a cell in pixels, 200 to 2 000.</param>
    /// <param name="height">Height of a cell in pixels, 200 to 2 000.</param>
    /// <exception cref="ArgumentException">There is no plot, or the extension is another one.</exception>
    /// <exception cref="ArgumentOutOfRangeException">Columns, width or height is out of range.</exception>
    /// <exception cref="IOException">The file cannot be written; nothing is left behind.</exception>
    public static void Save(IReadOnlyList<Plot> plots, string path, int columns = 2, int width = 600, int height = 400)
    {
        ArgumentNullException.ThrowIfNull(plots);
        ArgumentNullException.ThrowIfNull(path);
        ArgumentOutOfRangeException.ThrowIfNotEqual(columns is >= 1 and <= 10, true, nameof(columns));
        ArgumentOutOfRangeException.ThrowIfNotEqual(width is >= 200 and <= 2_000, true, nameof(width));
        ArgumentOutOfRangeException.ThrowIfNotEqual(height is >= 200 and <= 2_000, true, nameof(height));
        if (plots.Count == 0)
        {
            throw new ArgumentException("A sheet needs at least one plot.", nameof(plots));
        }

        columns = Math.Min(columns, plots.Count);
        var (wide, high) = (columns * width, (plots.Count + columns - 1) / columns * height);
        var words = string.Join('\n', plots.Select(p => p.AlternativeText()));
        PictureFile.Write(path, PlotPicture.IsSvg(path) ? Svg() : Png());

        byte[] Png()
        {
            using var surface = SKSurface.Create(new SKImageInfo(wide, high));
            Draw(surface.Canvas);
            using var image = surface.Snapshot();
            using var data = image.Encode(SKEncodedImageFormat.Png, 100);
            return PngText.Describe(data.ToArray(), words);
        }

        byte[] Svg()
        {
            using MemoryStream stream = new();
            using (var canvas = SKSvgCanvas.Create(new SKRect(0, 0, wide, high), stream))
            {
                Draw(canvas);
            }

            return Encoding.UTF8.GetBytes(PlotPicture.Finish(Encoding.UTF8.GetString(stream.ToArray()), wide, high, words));
        }

        void Draw(SKCanvas canvas)
        {
            using SKPaint paper = new() { Color = plots[0].FigureBackground.Color.ToSKColor() };
            canvas.DrawRect(0, 0, wide, high, paper);
            foreach (var (i, plot) in plots.Index())
            {
                var (left, top) = (i % columns * width, i / columns * height);
                lock (plot.Sync)
                {
                    var (clears, scale) = (plot.RenderManager.ClearCanvasBeforeEachRender, plot.ScaleFactor);
                    (plot.RenderManager.ClearCanvasBeforeEachRender, plot.ScaleFactor) = (false, PlotPicture.Scale(width, height));
                    canvas.Save();
                    canvas.Translate(left, top);
                    try
                    {
                        plot.Render(canvas, new PixelRect(0, width, height, 0));
                    }
                    finally
                    {
                        canvas.Restore();
                        (plot.RenderManager.ClearCanvasBeforeEachRender, plot.ScaleFactor) = (clears, scale);
                    }
                }
            }
        }
    }
}
