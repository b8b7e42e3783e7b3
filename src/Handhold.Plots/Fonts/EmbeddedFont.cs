using System.Text;
using SkiaSharp;

namespace Handhold.Plots;

/// <summary>Source Sans 3, carried inside this assembly, so that a picture looks the same on a machine without fonts.</summary>
/// <remarks>
/// Labels get these faces directly. Nothing is registered with ScottPlot and nothing is static, so other plots of the same program stay as
/// they are. Licence: OFL.txt beside this file; the font files are unmodified, as its reserved name asks.
/// </remarks>
internal sealed class EmbeddedFont
{
    public const string Family = "Source Sans 3";

    private readonly SKTypeface _regular = Load("SourceSans3_400Regular.ttf");
    private readonly SKTypeface _bold = Load("SourceSans3_700Bold.ttf");

    /// <summary>The embedded face, or, for text in a script that it lacks, a face of the machine that has the first missing character.</summary>
    public SKTypeface For(string text, bool bold)
    {
        var embedded = bold ? _bold : _regular;
        foreach (var rune in text.EnumerateRunes())
        {
            if (!Rune.IsControl(rune) && embedded.GetGlyph(rune.Value) == 0)
            {
                return SKFontManager.Default.MatchCharacter(null, embedded.FontStyle, null, rune.Value) ?? embedded;
            }
        }

        return embedded;
    }

    private static SKTypeface Load(string file)
    {
        using var stream = typeof(EmbeddedFont).Assembly.GetManifestResourceStream(file);
        using var data = stream is null ? null : SKData.Create(stream);
        return (data is null ? null : SKTypeface.FromData(data))
            ?? throw new InvalidOperationException(
                $"The font {file} is missing from the Handhold.Plots assembly, or cannot be read: reinstall the package."
            );
    }
}
