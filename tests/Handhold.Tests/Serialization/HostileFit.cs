using System.Globalization;
using System.Text.RegularExpressions;
using Handhold.Randomness;

namespace Handhold.Tests.Serialization;

/// <summary>Damage to a saved fit, as chance or malice would do it.</summary>
internal static partial class HostileFit
{
    private static readonly string[] s_numbers =
    [
        "NaN",
        "Infinity",
        "-Infinity",
        "null",
        "true",
        "\"5\"",
        "[]",
        "{}",
        "-0",
        "-1",
        "0",
        "1",
        "2",
        "0.5",
        "1e-308",
        "5e-324",
        "1e-9",
        "1e9",
        "1e308",
        "1e309",
        "-1e308",
        "2147483647",
        "2147483648",
        "-2147483648",
        "99999999999999999999",
        "0.1e1",
        "1.0",
        "01",
        "1e",
    ];

    private static readonly string[] s_texts =
    [
        "",
        " ",
        "none",
        "normal",
        "posterior",
        "likelihood",
        "bias-reduced",
        "stops",
        "link",
        "estimated",
        "probit",
        "perRow",
        "\\ud800",
        "\\u0000",
        "a\\nb",
        "schemaVersion",
        "frames",
        "exposure",
        "setup",
        "é",
    ];

    /// <summary>One to three damages, the same for the same stream.</summary>
    public static string Of(string text, RandomStream chance)
    {
        for (var damages = 1 + Below(chance, 3); damages > 0; damages--)
            text = Damaged(text, chance);
        return text;
    }

    private static string Damaged(string text, RandomStream chance)
    {
        switch (Below(chance, 12))
        {
            case 0:
                return text[..Below(chance, text.Length + 1)];
            case 1:
                var from = Below(chance, text.Length + 1);
                return text.Remove(from, Math.Min(Below(chance, 200), text.Length - from));
            case 2:
                return text.Insert(Below(chance, text.Length + 1), new string("[{\"0,}]:"[Below(chance, 8)], 1 + Below(chance, 40)));
            case 3:
                return Replaced(text, Numbers(), chance, _ => new string('[', 30) + new string(']', 30));
            case 4:
                return Replaced(text, Lines(), chance, line => line.TrimEnd().TrimEnd(',') + ",\n" + line);
            case 5:
                return Replaced(text, Lines(), chance, _ => "");
            case 6:
                return Replaced(text, Texts(), chance, _ => $"\"{Any(s_texts, chance)}\"");
            case 7:
                return Replaced(text, Texts(), chance, was => $"\"{was.Trim('"')}{new string('x', Below(chance, 5000))}\"");
            case 8:
                return Replaced(
                    text,
                    Numbers(),
                    chance,
                    was =>
                        double.TryParse(was, CultureInfo.InvariantCulture, out var n)
                            ? (n * Math.Exp(20 * chance.Normal())).ToString("R", CultureInfo.InvariantCulture)
                            : was
                );
            default:
                return Replaced(text, Numbers(), chance, _ => Any(s_numbers, chance));
        }
    }

    private static string Replaced(string text, Regex what, RandomStream chance, Func<string, string> by)
    {
        var places = what.Matches(text);
        if (places.Count == 0)
            return text;
        var place = places[Below(chance, places.Count)];
        return text[..place.Index] + by(place.Value) + text[(place.Index + place.Length)..];
    }

    private static string Any(string[] choices, RandomStream chance) => choices[Below(chance, choices.Length)];

    private static int Below(RandomStream chance, int count) => (int)(chance.Uniform() * count);

    [GeneratedRegex(@"(?<![\w""])-?\d[\d.eE+-]*")]
    private static partial Regex Numbers();

    [GeneratedRegex("\"[^\"\n]*\"")]
    private static partial Regex Texts();

    [GeneratedRegex("[^\n]*\n")]
    private static partial Regex Lines();
}
