using ScottPlot;

namespace Handhold.Plots;

/// <summary>The looks of text, all in the embedded font; sizes in pixels.</summary>
internal sealed class Lettering
{
    public const float Title = 17;
    public const float Body = 12.5f;
    public const float Small = 11;

    private readonly EmbeddedFont _font = new();

    public LabelStyle Of(string text, float size, Color color, bool bold = false)
    {
        LabelStyle style = new();
        Dress(style, text, size, color, bold);
        return style;
    }

    public void Dress(LabelStyle style, string text, float size, Color color, bool bold = false)
    {
        style.Text = text;
        style.Font = _font.For(text, bold);
        style.FontName = style.Font.FamilyName;
        style.Bold = bold;
        style.FontSize = size;
        style.ForeColor = color;
        style.BorderWidth = 0;
    }
}
