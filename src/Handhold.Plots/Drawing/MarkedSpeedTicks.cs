using ScottPlot;

namespace Handhold.Plots;

/// <summary>Ticks where cameras have marks: full stops labelled, as many as fit; the finer marks as small ticks.</summary>
internal sealed class MarkedSpeedTicks(Marks marks) : ITickGenerator
{
    private const float LabelGap = 8;

    public Tick[] Ticks { get; private set; } = [];

    public int MaxTickCount { get; set; } = 200;

    public void Regenerate(CoordinateRange range, Edge edge, PixelLength size, Paint paint, LabelStyle labelStyle)
    {
        if (!(range.Span > 0) || !double.IsFinite(range.Span) || !(size.Length > 0))
        {
            Ticks = [];
            return;
        }

        bool InRange(ShutterSpeed speed) => speed.Log2Seconds >= range.Min && speed.Log2Seconds <= range.Max;
        var full = MarkedSpeeds.Series(Marks.Full);
        var step = Step(range, size, paint, labelStyle, full.Where(InRange));
        // Counting from 1 s keeps the same marks labelled while a viewer pans.
        var second = full.IndexOf(ShutterSpeed.FromSeconds(1));
        var majors = full.Select((speed, i) => (speed, labelled: (i - second) % step == 0)).Where(m => InRange(m.speed)).ToArray();
        var taken = majors.Select(m => m.speed).ToHashSet();
        Ticks =
        [
            .. majors.Select(m => Tick.Major(m.speed.Log2Seconds, m.labelled ? Text(m.speed) : "")),
            .. MarkedSpeeds.Series(marks).Where(s => InRange(s) && !taken.Contains(s)).Select(s => Tick.Minor(s.Log2Seconds)),
        ];
    }

    /// <summary>The mark without its unit, which the axis names.</summary>
    private static string Text(ShutterSpeed speed) => CurveWords.Unitless(speed.ToString());

    private static int Step(CoordinateRange range, PixelLength size, Paint paint, LabelStyle style, IEnumerable<ShutterSpeed> visible)
    {
        var widest = visible.Select(s => style.Measure(Text(s), paint).Width).DefaultIfEmpty(0).Max() + LabelGap;
        // Neighbouring full stops are marked at least 0.9 stop apart: 1/8 and 1/15 s are the nearest.
        var pixelsAMark = size.Length / range.Span * 0.9;
        return Math.Max(1, (int)Math.Ceiling(widest / pixelsAMark));
    }
}
