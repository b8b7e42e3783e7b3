using System.Collections.Immutable;

namespace Handhold;

/// <summary>The shutter speeds that are marked on cameras, from 1/8000 s to 30 s.</summary>
/// <remarks>
/// A mark is a rounded number: 1/60 stands for the exact 1/64 s. Everywhere else in the library a marked speed is the number on the mark, as it is recorded
/// in photographs; <see cref="Exact"/> gives the time behind it. Checked by golden/marked-speeds.
/// </remarks>
public static class MarkedSpeeds
{
    private const double FastestExactLog2 = -13; // 1/8192 s, marked 1/8000
    private const double Hair = 1e-6;

    private static readonly ImmutableArray<ShutterSpeed> Thirds = Read(
        "1/8000 1/6400 1/5000 1/4000 1/3200 1/2500 1/2000 1/1600 1/1250 1/1000 1/800 1/640 1/500 1/400 1/320 1/250 1/200 1/160 1/125 1/100 1/80 "
            + "1/60 1/50 1/40 1/30 1/25 1/20 1/15 1/13 1/10 1/8 1/6 1/5 1/4 0.3 0.4 0.5 0.6 0.8 1 1.3 1.6 2 2.5 3.2 4 5 6 8 10 13 15 20 25 30"
    );

    private static readonly ImmutableArray<ShutterSpeed> Halves = Read(
        "1/8000 1/6000 1/4000 1/3000 1/2000 1/1500 1/1000 1/750 1/500 1/350 1/250 1/180 1/125 1/90 1/60 1/45 1/30 1/20 1/15 1/10 1/8 1/6 1/4 "
            + "0.3 0.5 0.7 1 1.5 2 3 4 6 8 10 15 20 30"
    );

    private static readonly ImmutableArray<ShutterSpeed> Fulls = [.. Thirds.Where((_, i) => i % 3 == 0)];

    /// <summary>All marks of a series, fastest (1/8000 s) first, slowest 30 s.</summary>
    /// <exception cref="ArgumentOutOfRangeException">No such series.</exception>
    public static ImmutableArray<ShutterSpeed> Series(Marks marks) =>
        marks switch
        {
            Marks.Full => Fulls,
            Marks.Half => Halves,
            Marks.Third => Thirds,
            _ => throw new ArgumentOutOfRangeException(nameof(marks), marks, "Marks come in full, half and third stops."),
        };

    /// <summary>The mark nearest to <paramref name="speed"/> in stops, the faster of two equally near. Beyond the ends it is the mark at that end.</summary>
    public static ShutterSpeed Nearest(ShutterSpeed speed, Marks marks) =>
        Series(marks).MinBy(mark => Math.Abs(mark.SlowerThan(speed).Value));

    /// <summary>A speed as it is told to people: the nearest mark, or the speed itself where no mark is within half a stop.</summary>
    public static ShutterSpeed Told(ShutterSpeed speed, Marks marks) =>
        Nearest(speed, marks) is var mark && speed.IsSameSpeed(mark, tolerance: 0.5) ? mark : speed;

    /// <summary>The slowest mark that is not slower than <paramref name="speed"/>: rounding to the fast side.</summary>
    /// <remarks>A mark slower by less than one part in a million counts as reached, so that a time through single precision stays on its mark.</remarks>
    /// <exception cref="ArgumentOutOfRangeException">The speed is faster than 1/8000 s, the fastest mark; <see cref="TryAtMost"/> does not throw.</exception>
    public static ShutterSpeed AtMost(ShutterSpeed speed, Marks marks) =>
        TryAtMost(speed, marks, out var mark)
            ? mark
            : throw new ArgumentOutOfRangeException(
                nameof(speed),
                $"{speed} is faster than {Series(marks)[0]}, the fastest mark, so no mark is as fast. Ask for a slower speed, or call TryAtMost."
            );

    /// <summary>As <see cref="AtMost"/>; false when the speed is faster than every mark.</summary>
    /// <param name="speed">The speed to round to the fast side.</param>
    /// <param name="marks">The series.</param>
    /// <param name="mark">The mark, or <c>default</c>.</param>
    public static bool TryAtMost(ShutterSpeed speed, Marks marks, out ShutterSpeed mark)
    {
        mark = Series(marks).LastOrDefault(m => m.Seconds <= speed.Seconds * (1 + Hair));
        return mark != default;
    }

    /// <summary>The exact time that a camera aims at when it is set to the mark nearest to <paramref name="speed"/>.</summary>
    /// <remarks>A power of 2, 2^(1/2) or 2^(1/3) seconds: 1/64 s behind 1/60, 32 s behind 30. At most 0.093 stop from a full or third mark, 0.24 from a half mark.</remarks>
    public static ShutterSpeed Exact(ShutterSpeed speed, Marks marks)
    {
        var series = Series(marks);
        var stopsFromFastest = series.IndexOf(Nearest(speed, marks)) * 18.0 / (series.Length - 1); // 1/8192 s to 32 s are 18 stops
        return ShutterSpeed.FromLog2Seconds(FastestExactLog2 + stopsFromFastest);
    }

    private static ImmutableArray<ShutterSpeed> Read(string marks) => [.. marks.Split(' ').Select(ShutterSpeed.Parse)];
}
