using System.Collections.Immutable;
using Handhold.Plots;

namespace Handhold.Cli;

/// <summary>Writes pictures of curves.</summary>
internal static class Pictures
{
    /// <summary>Writes one picture a curve and gives back their files, in the order of the curves.</summary>
    public static ImmutableArray<string> Write(
        ImmutableArray<KeeperCurve> curves,
        string file,
        (int Width, int Height) size,
        double rate,
        AnswerOptions options,
        Desk desk
    )
    {
        return Waiting.ForEach<(KeeperCurve Curve, string File), string>(
            desk,
            "Drawing",
            Names(curves, file),
            named =>
            {
                KeeperCurvePlot
                    .Draw(named.Curve, KeeperCurvePlotOptions.Default with { TargetRate = rate, Answers = options })
                    .SavePicture(named.File, size.Width, size.Height);
                return [named.File];
            }
        );
    }

    /// <summary>WIDTHxHEIGHT.</summary>
    public static (int Width, int Height) ReadSize(string option, string text) =>
        text.Split('x') is [var width, var height] && Pixels(option, width) is { } w && Pixels(option, height) is { } h
            ? (w, h)
            : throw Reading.Refused(
                option,
                text,
                "is no picture size.",
                "Write width and height from 200 to 10000 pixels, such as 1200x800."
            );

    private static int? Pixels(string option, string text) =>
        Reading.Whole(option, text) is var pixels and >= 200 and <= 10_000 ? pixels : null;

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
