using System.Collections.Immutable;
using System.Globalization;

namespace Handhold.Cli;

/// <summary>Numbers as people say them.</summary>
internal static class Plain
{
    public static string Percent(double share) =>
        share switch
        {
            < 0.001 and > 0 => "under 0.1 %",
            > 0.999 and < 1 => "over 99.9 %",
            < 0.01 or > 0.99 => string.Create(CultureInfo.InvariantCulture, $"{100 * share:0.#} %"),
            _ => string.Create(CultureInfo.InvariantCulture, $"{100 * share:0} %"),
        };

    public static string Percents(Interval interval) => $"{Percent(interval.Lower)} to {Percent(interval.Upper)}";

    /// <summary>A level such as 95 % or 99.9 %, exactly.</summary>
    public static string Level(double level) => string.Create(CultureInfo.InvariantCulture, $"{(decimal)level * 100:0.####} %");

    /// <summary>How many times: 4.9, 37.</summary>
    public static string Factor(double value) => value.ToString(value < 10 ? "0.0" : "0", CultureInfo.InvariantCulture);

    /// <summary>Stops with their sign.</summary>
    public static string Change(double stops) => stops.ToString("+0.0;-0.0;0.0", CultureInfo.InvariantCulture);

    public static string Stops(double value) => string.Create(CultureInfo.InvariantCulture, $"{value:0.0}");

    /// <summary>The nearest mark of a camera; far outside the marks, the time itself.</summary>
    public static string Speed(ShutterSpeed speed) => MarkedSpeeds.Told(speed, Marks.Third).ToString();

    public static string Set(ExposureSet set) =>
        set.Kind switch
        {
            ExposureSetKind.Everything => "any exposure",
            ExposureSetKind.NotReachable => "none",
            _ => string.Join(", or ", set.Pieces.Select(Piece)),
        };

    /// <summary>Whose rate is meant; empty where the conditions say it.</summary>
    public static string Whose(Whose? whose, ImmutableArray<Varying> varies)
    {
        string[] all = [.. varies.Select(v => v.Column).Distinct()];
        return whose switch
        {
            Handhold.Whose.Typical => "a typical level",
            Handhold.Whose.NewSetup => New(
                "setup",
                [.. varies.Where(v => !Handhold.Whose.NewSetup.Names(v, varies)).Select(v => v.Column).Distinct()]
            ),
            Handhold.Whose.NewPhotographer => New("photographer", all),
            Handhold.Whose.Population => "all levels on average",
            _ => "",
        };

        string New(string usual, string[] others) => $"a new {(all.Contains(usual) ? usual : string.Join(" and ", others))}";
    }

    /// <summary>What was said of conditions: sex M, magnification 0.5. Labels of levels that are not those meant say nothing.</summary>
    public static string Stated(Conditions conditions, Whose? whose, ImmutableArray<Varying> varies)
    {
        string[] unmeant = [.. varies.Where(v => whose is { } who && !who.Names(v, varies)).Select(v => v.Column)];
        return string.Join(
            ", ",
            Conditions
                .ColumnNames.Concat(conditions.Others.Keys)
                .Where(column => conditions[column] is not null && !unmeant.Contains(column))
                .Select(column => $"{column} {conditions[column]}")
        );
    }

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
            "normal" when luck.Unit == "stops" => $"{Stops(luck.Value)} stops, {luck.Origin}",
            "none" => luck.Kind,
            _ => string.Create(CultureInfo.InvariantCulture, $"{luck.Kind} {luck.Value:0.00}, {luck.Origin}"),
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
