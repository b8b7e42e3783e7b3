namespace Handhold.Photos;

/// <summary>Text from files and file names, fit for a table and a terminal.</summary>
internal static class PlainText
{
    /// <summary>The text with a question mark for everything that is no printable text, without outer blanks.</summary>
    public static string Of(string text) =>
        string.Concat(text.Select(c => char.IsControl(c) || char.IsSurrogate(c) || c == '\uFFFD' ? '?' : c)).Trim();
}
