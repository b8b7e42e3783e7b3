using System.Globalization;
using System.Text;
using System.Text.RegularExpressions;
using ScottPlot;

namespace Handhold.Plots;

/// <summary>Writing plots to picture files.</summary>
public static partial class PlotPicture
{
    /// <summary>Writes a PNG or an SVG, chosen by the file's extension; the file appears whole or not at all.</summary>
    /// <remarks>Text and lines grow with the 0.6th power of the picture's size, so a large picture gets both larger text and more room.</remarks>
    /// <param name="plot">The plot.</param>
    /// <param name="path">File name that ends in <c>.png</c> or <c>.svg</c>; an existing file is replaced.</param>
    /// <param name="width">Width in pixels, 200 to 10 000.</param>
    /// <param name="height">Height in pixels, 200 to 10 000.</param>
    /// <exception cref="ArgumentException">The extension is another one.</exception>
    /// <exception cref="ArgumentOutOfRangeException">Width or height is out of range.</exception>
    /// <exception cref="IOException">The file cannot be written; nothing is left behind.</exception>
    public static void SavePicture(this Plot plot, string path, int width = 1200, int height = 800)
    {
        ArgumentNullException.ThrowIfNull(plot);
        ArgumentNullException.ThrowIfNull(path);
        CheckSize(width, nameof(width));
        CheckSize(height, nameof(height));
        var svg = IsSvg(path);
        PictureFile.Write(path, Render(plot, width, height, svg));
    }

    /// <summary>What the plot shows, for those who cannot see it: title, then a sentence or several a line. Pictures carry it: an SVG as title and description, a PNG as its Description.</summary>
    /// <param name="plot">The plot.</param>
    public static string AlternativeText(this Plot plot)
    {
        ArgumentNullException.ThrowIfNull(plot);
        var panels = plot.Axes.GetPanels().OfType<TextPanel>().ToLookup(p => p.Edge);
        string[] lines =
        [
            plot.Axes.Title.Label.Text.Replace('\n', ' '),
            .. panels[Edge.Top].SelectMany(p => p.Paragraphs),
            .. plot.PlottableList.OfType<Spoken>().Select(s => s.Words),
            .. panels[Edge.Bottom].SelectMany(p => p.Paragraphs),
        ];
        return string.Join('\n', lines.Where(line => line.Length > 0));
    }

    /// <summary>Whether a file's extension asks for an SVG rather than a PNG.</summary>
    internal static bool IsSvg(string path) =>
        Path.GetExtension(path).ToUpperInvariant() switch
        {
            ".SVG" => true,
            ".PNG" => false,
            _ => throw new ArgumentException($"Cannot write a picture to '{path}': end the file name in .png or .svg.", nameof(path)),
        };

    private static void CheckSize(int pixels, string name)
    {
        if (pixels is < 200 or > 10_000)
        {
            throw new ArgumentOutOfRangeException(name, pixels, $"A picture's {name} is 200 to 10 000 pixels.");
        }
    }

    private static byte[] Render(Plot plot, int width, int height, bool svg)
    {
        lock (plot.Sync)
        {
            var before = plot.ScaleFactor;
            plot.ScaleFactor = Scale(width, height);
            try
            {
                return svg
                    ? Encoding.UTF8.GetBytes(Finish(plot.GetSvgXml(width, height), width, height, plot.AlternativeText()))
                    : Png(plot, width, height);
            }
            finally
            {
                plot.ScaleFactor = before;
            }
        }
    }

    /// <summary>How much larger text and lines are than in a picture of 600 by 400.</summary>
    internal static double Scale(int width, int height) => Math.Clamp(Math.Pow(Math.Min(width / 600.0, height / 400.0), 0.6), 0.75, 10);

    private static byte[] Png(Plot plot, int width, int height)
    {
        using var image = plot.GetImage(width, height);
        return PngText.Describe(image.GetImageBytes(ImageFormat.Png), plot.AlternativeText());
    }

    /// <summary>
    /// Scales in a browser, takes a plain sans serif where the font is missing (each glyph's place is in the file), has no stray commas, and
    /// numbers its clips from 1, where the renderer counts on through the life of the program.
    /// </summary>
    internal static string Finish(string svg, int width, int height, string words)
    {
        var size = string.Create(CultureInfo.InvariantCulture, $"width=\"{width}\" height=\"{height}\"");
        var scalable = string.Create(CultureInfo.InvariantCulture, $"{size} viewBox=\"0 0 {width} {height}\" role=\"img\"");
        Dictionary<string, string> clips = [];
        svg = ClipName().Replace(svg, m => clips.TryGetValue(m.Value, out var name) ? name : clips[m.Value] = $"clip{clips.Count + 1}");
        return TrailingComma()
            .Replace(svg, " $1\"")
            .Replace($"{size}>", $"{scalable}>{Spoken.Svg(words)}", StringComparison.Ordinal)
            .Replace("font-weight=\"600\"", "font-weight=\"bold\"", StringComparison.Ordinal)
            .Replace(
                $"font-family=\"{EmbeddedFont.Family}\"",
                $"font-family=\"'{EmbeddedFont.Family}', 'Source Sans Pro', Arial, sans-serif\"",
                StringComparison.Ordinal
            );
    }

    [GeneratedRegex("(?<=id=\"|clip-path=\"url\\(#)cl_[0-9a-f]+")]
    private static partial Regex ClipName();

    [GeneratedRegex(" ([xy]=\"[-0-9., ]*), \"")]
    private static partial Regex TrailingComma();
}
