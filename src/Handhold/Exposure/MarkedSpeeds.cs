using System.Collections.Immutable;

namespace Handhold;

/// <summary>The shutter speeds that are marked on cameras.</summary>
public static class MarkedSpeeds
{
    /// <summary>All marks of a series, fastest (1/8000 s) first, slowest 30 s.</summary>
    public static ImmutableArray<ShutterSpeed> Series(Marks marks) => throw new NotSupportedException(marks.ToString());

    /// <summary>The mark nearest to <paramref name="speed"/> in stops.</summary>
    public static ShutterSpeed Nearest(ShutterSpeed speed, Marks marks) => throw new NotSupportedException(speed + marks.ToString());

    /// <summary>The slowest mark that is not slower than <paramref name="speed"/>: rounding to the fast side.</summary>
    public static ShutterSpeed AtMost(ShutterSpeed speed, Marks marks) => throw new NotSupportedException(speed + marks.ToString());
}
