using System.Collections.Immutable;

namespace Handhold.Tables.Tests;

/// <summary>Short ways to read text as a table.</summary>
internal static class Text
{
    public static FrameTable Read(string text, TableOptions? options = null)
    {
        using var reader = new StringReader(text);
        return TableReader.Read(reader, "museum.csv", options, cancellation: TestContext.Current.CancellationToken);
    }

    public static ImmutableArray<TableError> Errors(string text, TableOptions? options = null) =>
        Assert.Throws<TableException>(() => Read(text, options)).Errors;

    public static TableError Error(string text, TableOptions? options = null) => Assert.Single(Errors(text, options));

    public static string Write(FrameTable table, bool spreadsheetSafe = true)
    {
        using var writer = new StringWriter();
        TableWriter.Write(table, writer, spreadsheetSafe);
        return writer.ToString();
    }
}
