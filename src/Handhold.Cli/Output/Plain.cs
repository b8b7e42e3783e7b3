using System.Collections.Immutable;
using System.Globalization;

namespace Handhold.Cli;

/// <summary>Numbers as people say them.</summary>
internal static class Plain
{
    public static string Percent(double share) =>
        share switch
        {
            < 0.01 and > 0 => "under 1 %",
            > 0.99 and < 1 => "over 99 %",
            _ => string.Create(CultureInfo.InvariantCulture, $"{Math.Round(100 * share)} %"),
        };

    public static string Percents(CredibleInterval interval) => $"{Percent(interval.Lower)} to {Percent(interval.Upper)}";

    /// <summary>A level such as 95 % or 99.9 %, exactly.</summary>
    public static string Level(double level) => string.Create(CultureInfo.InvariantCulture, $"{(decimal)level * 100:0.####} %");

    /// <summary>Three digits: 4.93.</summary>
    public static string Number(double value) => value.ToString("G3", CultureInfo.InvariantCulture);

    public static string Stops(double value) => string.Create(CultureInfo.InvariantCulture, $"{value:0.0}");

    /// <summary>The nearest mark of a camera; far outside the marks, the time itself.</summary>
    public static string Speed(ShutterSpeed speed)
    {
        var mark = MarkedSpeeds.Nearest(speed, Marks.Third);
        return (speed.IsSameSpeed(mark, tolerance: 0.5) ? mark : speed).ToString();
    }

    public static string Set(ExposureSet set) =>
        set.Kind switch
        {
            ExposureSetKind.Everything => "any exposure",
            ExposureSetKind.NotReachable => "none",
            _ => string.Join(", or ", set.Pieces.Select(Piece)),
        };

    public static string Bursts(ImmutableArray<int> bursts)
    {
        var groups = bursts.GroupBy(b => b).Select(g => g.Count() == 1 ? $"one of {g.Key}" : $"{g.Count()} of {g.Key}");
        return bursts.IsEmpty ? ""
            : bursts.Length == 1 ? "one burst"
            : string.Join(" and ", groups);
    }

    public static string Luck(LuckUsed luck) =>
        luck.Kind switch
        {
            "normal" => $"{Number(luck.Value)} stops, {luck.Origin}",
            "none" => "none",
            _ => $"correlation {Number(luck.Value)}, {luck.Origin}",
        };

    /// <summary>One frame, 3 frames.</summary>
    public static string Of(int count, string noun) =>
        string.Create(CultureInfo.InvariantCulture, $"{count} {noun}{(count == 1 ? "" : "s")}");

    private static string Piece(ExposurePiece piece) =>
        (piece.Lower, piece.Upper) switch
        {
            ({ } lower, { } upper) => $"{Mark(lower)} to {Mark(upper)}",
            (null, { } upper) => $"{Mark(upper)} or faster",
            ({ } lower, null) => $"{Mark(lower)} or slower",
            _ => "any exposure",
        };

    private static string Mark(double log2Seconds) => Speed(ShutterSpeed.FromLog2Seconds(log2Seconds));
}
