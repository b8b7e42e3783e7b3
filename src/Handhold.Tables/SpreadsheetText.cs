namespace Handhold.Tables;

/// <summary>Text that a spreadsheet would run as a formula, made harmless by a leading apostrophe, and back.</summary>
/// <remarks>
/// Text is dangerous when its first character, apostrophes aside, is one of = + - @ tab and carriage return. Apostrophes are looked past so
/// that every text comes back as it was.
/// </remarks>
internal static class SpreadsheetText
{
    public static string Neutralise(string text) => IsDangerous(text) ? "'" + text : text;

    public static string Restore(string text) => text.StartsWith('\'') && IsDangerous(text) ? text[1..] : text;

    private static bool IsDangerous(ReadOnlySpan<char> text) => text.TrimStart('\'') is ['=' or '+' or '-' or '@' or '\t' or '\r', ..];
}
