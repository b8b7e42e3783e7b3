using System.Collections.Immutable;
using System.Globalization;

namespace Handhold.Cli;

/// <summary>Reads the values of options. Each reader takes the option's name and text, and refuses with a sentence.</summary>
internal static class Reading
{
    private static readonly ImmutableArray<(string Name, int Seconds)> s_units = [("s", 1), ("min", 60), ("h", 3600)];

    /// <summary>A rate, level or assurance strictly between 0 and 1, as 0.95 or 95%.</summary>
    public static double Share(string option, string text) =>
        ShareOrEnd(option, text) is var share and > 0 and < 1
            ? share
            : throw Refused(option, text, "is not strictly between 0 and 1.", "Write a share such as 0.95 or 95%.");

    /// <summary>A share from 0 to 1, both ends included.</summary>
    public static double ShareOrEnd(string option, string text)
    {
        var percent = text.TrimEnd().EndsWith('%');
        var number = Number(option, percent ? text.TrimEnd()[..^1] : text);
        var share = percent ? PercentOf(number) : number;
        return share is >= 0 and <= 1
            ? share
            : throw Refused(option, text, "is not between 0 and 1.", "Write a share such as 0.95 or 95%.");
    }

    /// <summary>A finite number with a decimal point.</summary>
    public static double Number(string option, string text)
    {
        RefuseComma(option, text);
        return double.TryParse(text, NumberStyles.Float, CultureInfo.InvariantCulture, out var number) && double.IsFinite(number)
            ? number
            : throw Refused(option, text, "is not a number.", "Write it with a decimal point, such as 0.5.");
    }

    /// <summary>A whole number from 1 up.</summary>
    public static int Count(string option, string text) =>
        Whole(option, text) is var count and > 0
            ? count
            : throw Refused(option, text, "is not a count.", "Write a whole number from 1 up.");

    /// <summary>A whole number from 0 up.</summary>
    public static int Whole(string option, string text)
    {
        RefuseComma(option, text);
        return int.TryParse(text, NumberStyles.None, CultureInfo.InvariantCulture, out var number)
            ? number
            : throw Refused(option, text, "is not a whole number.", "Write digits only, such as 12.");
    }

    /// <summary>A shutter speed as people write it.</summary>
    public static ShutterSpeed Speed(string option, string text)
    {
        RefuseComma(option, text);
        return ShutterSpeed.TryParse(text, out var speed, out _)
            ? speed
            : throw Refused(option, text, "is not a shutter speed.", ShutterSpeed.AcceptedForms);
    }

    /// <summary>Conditions with one more column, as an option gave it.</summary>
    public static Conditions With(string option, string text, Conditions conditions, string column, string value)
    {
        try
        {
            return conditions.With(column, value);
        }
        catch (CellException impossible)
        {
            throw Refused(option, text, $"cannot be: {impossible.Problem}", impossible.Remedy);
        }
    }

    /// <summary>A length of time with its unit, such as 0.5s, 20min or 3h.</summary>
    public static TimeSpan Pause(string option, string text)
    {
        var unit = s_units.FirstOrDefault(unit => text.EndsWith(unit.Name, StringComparison.Ordinal));
        var number = unit.Name is null ? double.NaN : Number(option, text[..^unit.Name.Length]);
        return number >= 0 && number * unit.Seconds <= TimeSpan.FromDays(366).TotalSeconds
            ? TimeSpan.FromSeconds(number * unit.Seconds)
            : throw Refused(option, text, "is not a pause.", "Write a number from 0 up with its unit: 0.5s, 20min or 3h.");
    }

    /// <summary>One of the words of an option; words of later versions are refused as such.</summary>
    public static string Word(string option, string text, string[] words, string[]? later = null) =>
        words.Contains(text) ? text
        : later?.Contains(text) == true
            ? throw Refused(option, text, "is not in this version.", $"Use {option} {words[0]}, which is the default.")
        : throw Refused(option, text, "is not known.", $"Use {string.Join(" or ", words)}.");

    /// <summary>A list of column names between commas.</summary>
    public static string[] Columns(string option, string text)
    {
        var columns = text.Split(',', StringSplitOptions.TrimEntries);
        return columns.All(c => c.Length > 0) && columns.Distinct().Count() == columns.Length
            ? columns
            : throw Refused(option, text, "is not a list of different columns.", "Write names between commas, such as photographer,setup.");
    }

    /// <summary>NAME=VALUE.</summary>
    public static (string Name, string Value) Pair(string option, string text) =>
        text.IndexOf('=', StringComparison.Ordinal) is var at and > 0
            ? (text[..at].Trim(), text[(at + 1)..].Trim())
            : throw Refused(option, text, "has no name before an equals sign.", $"Write {option} NAME=VALUE.");

    public static UsageException Refused(string option, string text, string problem, string remedy) =>
        new($"{option} {(string.IsNullOrWhiteSpace(text) ? "''" : text)} {problem}", remedy, text);

    private static void RefuseComma(string option, string text)
    {
        if (text.Contains(',', StringComparison.Ordinal))
            throw Refused(
                option,
                text,
                "has a comma, which could mean two things.",
                "Write numbers with a decimal point and without separators."
            );
    }

    /// <summary>Through decimals, so that 99.9% is the very number that 0.999 is.</summary>
    private static double PercentOf(double number) => Math.Abs(number) <= 100 ? (double)((decimal)number / 100m) : number / 100;
}
