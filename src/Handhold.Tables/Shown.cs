using System.Globalization;
using System.Text;

namespace Handhold.Tables;

/// <summary>Text from a file made fit to be shown: control and direction characters escaped, long text cut.</summary>
internal static class Shown
{
    public static string From(ReadOnlySpan<char> text, int most = 40)
    {
        var shown = new StringBuilder();
        foreach (var c in text)
        {
            shown.Append(
                c switch
                {
                    '\n' => @"\n",
                    '\r' => @"\r",
                    '\t' => @"\t",
                    _ when Hidden(c) => string.Create(CultureInfo.InvariantCulture, $"\\u{(int)c:x4}"),
                    _ => [c],
                }
            );
            if (shown.Length > most)
            {
                return shown.ToString(0, most - 1) + "…";
            }
        }
        return shown.ToString();
    }

    private static bool Hidden(char c) =>
        char.GetUnicodeCategory(c)
            is UnicodeCategory.Control
                or UnicodeCategory.Format
                or UnicodeCategory.Surrogate
                or UnicodeCategory.LineSeparator
                or UnicodeCategory.ParagraphSeparator;
}
