using System.Collections.Immutable;
using System.Globalization;

namespace Handhold.Plots;

/// <summary>Everything a picture of changes in stops shows.</summary>
internal sealed record StopsScene(PictureWords Words, ImmutableArray<StopsRow> Rows, Palette Palette)
{
    public static StopsScene Of(KeeperCurve curve, PictureOptions options)
    {
        ImmutableArray<StopsRow> rows = [.. curve.InStops.Select(Row)];
        var rated = rows.Any(r => r.Rated is not null) ? " Hollow diamond: the rating." : "";
        return new StopsScene(
            new PictureWords(
                options.Title ?? Finding(rows),
                PictureWords.Name(curve),
                [
                    CurveWords.Data(curve),
                    $"Right: slower speeds are allowed. Bars: {CurveWords.Percent(curve.Model.Level)} intervals, open where they end in an arrow.{rated} {CurveWords.Estimator(curve)}{(curve.Linear is null ? $", {curve.Model.Priors.Version}" : "")}.",
                ],
                "What each thing allows, in stops. " + string.Join(" ", rows.Select(r => $"{r.Name}: {Value(r)}."))
            ),
            rows,
            Palette.Of(options.Theme)
        );
    }

    /// <summary>"+2.1 (+1.2 to +3.1)".</summary>
    public static string Value(StopsRow row) =>
        (row.Stops is { } stops ? CurveWords.Signed(stops) : "open")
        + (
            row.Lower is null && row.Upper is null
                ? ""
                : $" ({(row.Lower is { } l ? CurveWords.Signed(l) : "no limit")} to {(row.Upper is { } u ? CurveWords.Signed(u) : "no limit")})"
        );

    private static StopsRow Row(TermInStops effect) =>
        new(
            string.Join('\n', effect.Words.SelectMany(words => words.Split(", "))),
            effect.Stops?.Value,
            effect.Lower,
            effect.Upper,
            effect.Term.StartsWith("stabiliser", StringComparison.Ordinal)
                ? effect.At.Where(a => a.Key == "stabiliser_stops").Select(a => (double?)a.Value).FirstOrDefault()
                : null
        );

    internal static string Finding(ImmutableArray<StopsRow> rows)
    {
        if (rows.Where(r => r.Lower > 0 || r.Upper < 0).MaxBy(r => Math.Abs(r.Stops ?? 0)) is not { Stops: { } stops } largest)
        {
            return "The frames tell none of these from nothing";
        }

        var name = largest.Name.Split('\n')[0];
        var size = Math.Abs(stops).ToString("0.0", CultureInfo.InvariantCulture);
        return stops >= 0 ? $"{Capital(name)} allows speeds {size} stops slower" : $"{Capital(name)} takes speeds {size} stops faster";
    }

    private static string Capital(string name) => char.ToUpperInvariant(name[0]) + name[1..];
}
