namespace Handhold.Photos;

/// <summary>Text from files and file names, fit for a table and a terminal.</summary>
internal static class PlainText
{
    /// <summary>The text with a question mark for everything that is no printable text, without outer blanks.</summary>
    public static string Of(string text)
    {
        foreach (var letter in text)
            if (IsOdd(letter))
                return string.Concat(text.Select(c => IsOdd(c) ? '?' : c)).Trim();
        return text.Trim();
    }

    private static bool IsOdd(char letter) => char.IsControl(letter) || char.IsSurrogate(letter) || letter == '\uFFFD';
}
