using System.Collections.Immutable;
using Handhold.Plots;
using ScottPlot;

namespace Handhold.Cli;

/// <summary>Writes pictures of curves.</summary>
internal static class Pictures
{
    /// <summary>Curves in a row of a sheet.</summary>
    private const int Columns = 3;

    /// <summary>Writes one picture a curve and gives back their files, in the order of the curves.</summary>
    public static ImmutableArray<string> Write(
        ImmutableArray<KeeperCurve> curves,
        string file,
        (int Width, int Height) size,
        Desk desk,
        Func<KeeperCurve, Plot> draw
    ) =>
        WriteEach(
            curves,
            file,
            desk,
            (curve, own) =>
            {
                using var plot = draw(curve);
                plot.SavePicture(own, size.Width, size.Height);
            }
        );

    /// <summary>Writes a sheet of small pictures a curve and gives back their files.</summary>
    public static ImmutableArray<string> WriteSheets(
        ImmutableArray<KeeperCurve> curves,
        string file,
        (int Width, int Height) size,
        Desk desk,
        Func<KeeperCurve, ImmutableArray<Plot>> draw
    ) => WriteEach(curves, file, desk, (curve, own) => PictureSheet.Save(draw(curve), own, Columns, size.Width, size.Height));

    /// <summary>One picture of all curves: over each other, or, where they are too many, or only one, side by side.</summary>
    public static string WriteSetups(
        ImmutableArray<KeeperCurve> curves,
        string file,
        (int Width, int Height) size,
        double rate,
        PictureOptions options
    )
    {
        if (curves.Length is > 1 and <= SetupsPlot.MostCurves)
        {
            using var plot = SetupsPlot.Draw(curves, rate, options);
            plot.SavePicture(file, size.Width, size.Height);
        }
        else
        {
            KeeperCurvePlotOptions one = new()
            {
                TargetRate = rate,
                Answers = options.Answers,
                Theme = options.Theme,
            };
            PictureSheet.Save([.. curves.Select(c => KeeperCurvePlot.Draw(c, one))], file, Columns);
        }

        return file;
    }

    private static ImmutableArray<string> WriteEach(
        ImmutableArray<KeeperCurve> curves,
        string file,
        Desk desk,
        Action<KeeperCurve, string> write
    ) =>
        Waiting.ForEach<(KeeperCurve Curve, string File), string>(
            desk,
            "Drawing",
            Names(curves, file),
            named =>
            {
                write(named.Curve, named.File);
                return [named.File];
            }
        );

    /// <summary>WIDTHxHEIGHT.</summary>
    public static (int Width, int Height) ReadSize(string option, string text) => ReadSize(option, text, 10_000);

    /// <summary>The size of a cell of a sheet.</summary>
    public static (int Width, int Height) ReadCellSize(string option, string text) => ReadSize(option, text, 2_000);

    private static (int Width, int Height) ReadSize(string option, string text, int most) =>
        text.Split('x') is [var width, var height] && Pixels(option, width, most) is { } w && Pixels(option, height, most) is { } h
            ? (w, h)
            : throw Reading.Refused(
                option,
                text,
                "is no picture size.",
                FormattableString.Invariant($"Write width and height from 200 to {most} pixels, such as 1200x800.")
            );

    private static int? Pixels(string option, string text, int most) =>
        Reading.Whole(option, text) is var pixels && pixels >= 200 && pixels <= most ? pixels : null;

    /// <summary>The file itself for one curve; with several, the curve's name before the dot.</summary>
    public static (KeeperCurve Curve, string File)[] Names(ImmutableArray<KeeperCurve> curves, string file)
    {
        if (curves is [var only])
            return [(only, file)];
        var taken = new HashSet<string>(StringComparer.OrdinalIgnoreCase);
        return [.. curves.Select(c => (c, Free($"{Path.ChangeExtension(file, null)}-{Slug(c.Key)}", Path.GetExtension(file), taken)))];
    }

    private static string Free(string stem, string extension, HashSet<string> taken)
    {
        var name = stem + extension;
        for (var copy = 2; !taken.Add(name); copy++)
            name = FormattableString.Invariant($"{stem}-{copy}{extension}");
        return name;
    }

    /// <summary>Letters and digits of the key, with hyphens between: safe in any file system and on any shell.</summary>
    private static string Slug(CurveKey key)
    {
        var words = string.Concat(
            key.Values.Select(v => v.Value + " ").SelectMany(text => text).Select(c => char.IsLetterOrDigit(c) ? c : ' ')
        );
        var slug = string.Join('-', words.Split(' ', StringSplitOptions.RemoveEmptyEntries)).ToLowerInvariant();
        return slug.Length == 0 ? "curve" : slug[..Math.Min(slug.Length, 80)];
    }
}
