using System.Globalization;
using System.Text;

namespace Handhold;

public readonly partial record struct ShutterSpeed
{
    /// <summary>How a shutter speed is written, as the sentence that ends every problem of <see cref="TryParse"/>.</summary>
    public const string AcceptedForms = "Write a shutter speed as 1/60, 1/60 s, 300/10, 0.5, 1.3s or 2\".";

    /// <summary>Reads a shutter speed as cameras and people write it, whatever the culture of the machine.</summary>
    /// <param name="text">
    /// A number of seconds or a fraction, with a decimal point, then nothing, <c>s</c>, <c>sec</c> or a seconds mark; or the camera's <c>1"3</c> for 1.3 s.
    /// </param>
    /// <exception cref="FormatException">The text is no shutter speed; the message says why and what is accepted.</exception>
    public static ShutterSpeed Parse(string text) =>
        TryParse(text, out var speed, out var problem) ? speed : throw new FormatException(problem);

    /// <summary>Reads a shutter speed as <see cref="Parse"/> does, without throwing.</summary>
    /// <param name="text">The text; null is treated as empty.</param>
    /// <param name="speed">The speed, or <c>default</c>.</param>
    /// <param name="problem">What is wrong and what is accepted; empty when nothing is wrong.</param>
    public static bool TryParse(string? text, out ShutterSpeed speed, out string problem)
    {
        var fault = Read((text ?? "").Trim(), out var seconds);
        speed = fault is null ? new(seconds) : default;
        problem = fault is null ? "" : $"{Quoted(text)} {fault}. {AcceptedForms}";
        return fault is null;
    }

    /// <summary>What is wrong with the text, or null and its seconds.</summary>
    private static string? Read(string text, out double seconds)
    {
        seconds = 0;
        if (text.Length == 0)
            return "is empty";
        if (text.Contains(',', StringComparison.Ordinal))
            return "has a decimal comma where a point is meant";
        if (text[0] is '-' or '\u2212')
            return "is negative";

        var parts = WithoutUnit(text).Split('/');
        if (parts.Length > 2)
            return "has more than one slash";
        var (top, bottom) = (0.0, 1.0);
        if (!IsNumber(parts[0], out top) || (parts.Length == 2 && !IsNumber(parts[1], out bottom)))
            return parts.Length == 1 ? "is not a number of seconds" : "is not one positive number over another";
        if (bottom == 0)
            return "divides by zero";
        seconds = top / bottom;
        return seconds == 0 ? "is not above zero"
            : double.IsFinite(seconds) ? null
            : "is longer than any number";
    }

    private static string WithoutUnit(string text)
    {
        foreach (var unit in (ReadOnlySpan<string>)["sec.", "sec", "s"])
        {
            if (text.EndsWith(unit, StringComparison.OrdinalIgnoreCase))
                return text[..^unit.Length];
        }

        var mark = text.AsSpan().IndexOfAny('"', '\u2033', '\u201D');
        if (mark < 0)
            return text;
        var (whole, tenths) = (text[..mark], text[(mark + 1)..]);
        return tenths.Length == 0 ? whole
            : tenths.All(char.IsAsciiDigit) && whole.All(char.IsAsciiDigit) ? $"{whole}.{tenths}"
            : text;
    }

    private static bool IsNumber(string text, out double value) =>
        double.TryParse(text.Trim(), NumberStyles.AllowDecimalPoint | NumberStyles.AllowExponent, CultureInfo.InvariantCulture, out value)
        && double.IsFinite(value);

    private static string Quoted(string? text)
    {
        const int longest = 40;
        var shown = new StringBuilder("'");
        foreach (var letter in (text ?? "").Take(longest))
            _ =
                char.IsControl(letter) || char.IsSurrogate(letter)
                    ? shown.Append(CultureInfo.InvariantCulture, $"\\u{(int)letter:x4}")
                    : shown.Append(letter);
        return shown.Append(text?.Length > longest ? "…'" : "'").ToString();
    }
}
