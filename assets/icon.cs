#:package ScottPlot
#:property RestorePackagesWithLockFile=false
#:property PublishAot=false
// Draws icon.png, the packages' icon: a falling keeper curve and the exposure that was asked for.
// Run it in this folder: dotnet run icon.cs
using SkiaSharp;

const int side = 128;
SKColor ink = SKColor.Parse("#123C4A");
SKColor paper = SKColor.Parse("#FDFBF7");
SKColor amber = SKColor.Parse("#F0A33C");

using var surface = SKSurface.Create(new SKImageInfo(side, side, SKColorType.Rgba8888, SKAlphaType.Premul));
var canvas = surface.Canvas;
using var paint = new SKPaint { IsAntialias = true, Color = ink };
canvas.DrawRoundRect(0, 0, side, side, 28, 28, paint);

// One logistic curve from upper left to lower right; the dot sits where it falls to one half.
static SKPoint At(float x) => new(x, 30 + 68 / (1 + MathF.Exp((64 - x) / 8)));
using var curve = new SKPath();
curve.MoveTo(At(18));
for (var x = 19; x <= 110; x++)
{
    curve.LineTo(At(x));
}

paint.Style = SKPaintStyle.Stroke;
paint.StrokeCap = SKStrokeCap.Round;
paint.StrokeWidth = 9;
paint.Color = paper;
canvas.DrawPath(curve, paint);

paint.Style = SKPaintStyle.Fill;
paint.Color = ink;
canvas.DrawCircle(At(64), 19, paint);
paint.Color = amber;
canvas.DrawCircle(At(64), 14, paint);

using var image = surface.Snapshot();
using var png = image.Encode(SKEncodedImageFormat.Png, 100);
File.WriteAllBytes("icon.png", png.ToArray());
