using ScottPlot;
using SkiaSharp;

namespace Handhold.Plots;

/// <summary>A card as a PNG. Measures are in points of a card 390 wide, the width of a telephone.</summary>
internal sealed class CardPicture
{
    private const float Width = 390;
    private const float Height = Width * 148 / 105;
    private const float Margin = 16;
    private const float Right = Width - Margin;

    /// <summary>Left and right end of the bars, and right ends of the columns.</summary>
    private const float BarLeft = 84;
    private const float BarRight = 176;
    private const float RateRight = 226;
    private const float ColumnWidth = 49;

    private readonly Palette _palette = Palette.Light;
    private readonly Lettering _lettering = new();
    private readonly SKCanvas _canvas;
    private readonly Paint _paint;
    private float _y = Margin;

    private CardPicture(SKCanvas canvas, Paint paint) => (_canvas, _paint) = (canvas, paint);

    public static byte[] Png(CardFace face, int width)
    {
        var scale = width / Width;
        using var surface = SKSurface.Create(new SKImageInfo(width, (int)MathF.Round(Height * scale)));
        using var paint = Paint.NewDisposablePaint();
        surface.Canvas.Scale(scale);
        new CardPicture(surface.Canvas, paint).Draw(face);
        using var image = surface.Snapshot();
        using var data = image.Encode(SKEncodedImageFormat.Png, 100);
        return data.ToArray();
    }

    private void Draw(CardFace face)
    {
        _canvas.Clear(_palette.Tested.ToSKColor());
        Paragraph(face.Title, 18, _palette.Ink, bold: true);
        _y += 2;
        Paragraph(face.Trust.Head, 27, _palette.Target, bold: true);
        Paragraph(face.Trust.Meaning, 15, _palette.Target);
        _y += 8;
        Header();
        // The rows share what the words leave, within what is pleasant.
        var below =
            Measure(face.Support, 15, Right - Margin - 16, bold: true) + 30 + face.Notes.Sum(n => Measure(n, 11.5f, Right - Margin) + 2);
        var step = Math.Clamp((Height - Margin - below - _y) / face.Rows.Length, 21, 32);
        foreach (var row in face.Rows)
        {
            Row(row, step);
        }

        Support(face.Support);
        foreach (var note in face.Notes)
        {
            Paragraph(note, 11.5f, _palette.Quiet);
            _y += 2;
        }
    }

    private void Header()
    {
        Put("Frames for one keeper", Right, _y + 8, Alignment.MiddleRight, 12.5f, _palette.Quiet);
        Put("Speed", Margin, _y + 24, Alignment.MiddleLeft, 12.5f, _palette.Quiet);
        Put("Keepers", BarLeft, _y + 24, Alignment.MiddleLeft, 12.5f, _palette.Quiet);
        foreach (var (i, assurance) in CardFace.Assurances.Index())
        {
            Put(CurveWords.Percent(assurance), Column(i), _y + 24, Alignment.MiddleRight, 12.5f, _palette.Quiet);
        }

        _y += 34;
    }

    private void Row(CardRow row, float step)
    {
        Box(Margin, _y, Right, _y + 0.75f, _palette.Rule);
        var middle = _y + (step / 2);
        Put(row.Speed, Margin, middle, Alignment.MiddleLeft, 17, _palette.Ink, bold: true);
        if (row.Rate is { } rate)
        {
            Box(BarLeft, middle - 7, Bar(rate.Median), middle + 3, _palette.Curve);
            Box(
                Bar(rate.Interval.Lower),
                middle + 5,
                Math.Max(Bar(rate.Interval.Upper), Bar(rate.Interval.Lower) + 1),
                middle + 7,
                _palette.Quiet
            );
        }

        Put(CardWords.Rate(row.Rate), RateRight, middle, Alignment.MiddleRight, row.Rate is null ? 12.5f : 17, _palette.Ink);
        foreach (var (i, frames) in row.Frames.Index())
        {
            Put(frames, Column(i), middle, Alignment.MiddleRight, 17, _palette.Ink);
        }

        _y += step;
    }

    private void Support(string words)
    {
        var height = Measure(words, 15, Right - Margin - 16, bold: true) + 12;
        using SKPaint outline = new()
        {
            Color = _palette.Target.ToSKColor(),
            StrokeWidth = 2,
            IsStroke = true,
            IsAntialias = true,
        };
        _y += 6;
        _canvas.DrawRect(new SKRect(Margin + 1, _y, Right - 1, _y + height), outline);
        var top = _y;
        _y += 6;
        Paragraph(words, 15, _palette.Ink, bold: true, inset: 8);
        _y = top + height + 8;
    }

    private static float Column(int index) => Right - (ColumnWidth * (CardFace.Assurances.Length - 1 - index));

    private static float Bar(double rate) => BarLeft + (float)(rate * (BarRight - BarLeft));

    private void Paragraph(string words, float size, Color color, bool bold = false, float inset = 0)
    {
        var (style, height) = Wrapped(words, size, Right - Margin - (2 * inset), color, bold);
        style.Alignment = Alignment.UpperLeft;
        style.Render(_canvas, new Pixel(Margin + inset, _y), _paint);
        _y += height;
    }

    private float Measure(string words, float size, float width, bool bold = false) =>
        Wrapped(words, size, width, _palette.Ink, bold).Height;

    private (LabelStyle Style, float Height) Wrapped(string words, float size, float width, Color color, bool bold)
    {
        var style = _lettering.Of(words, size, color, bold);
        style.Text = Plots.Paragraph.Wrap(words, width, style, _paint);
        return (style, style.Measure(_paint).Height);
    }

    private void Put(string text, float x, float y, Alignment alignment, float size, Color color, bool bold = false)
    {
        var style = _lettering.Of(text, size, color, bold);
        style.Alignment = alignment;
        style.Render(_canvas, new Pixel(x, y), _paint);
    }

    private void Box(float left, float top, float right, float bottom, Color color)
    {
        using SKPaint fill = new() { Color = color.ToSKColor(), IsAntialias = true };
        _canvas.DrawRect(new SKRect(left, top, right, bottom), fill);
    }
}
