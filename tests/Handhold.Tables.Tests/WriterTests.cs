using System.Collections.Immutable;
using static Handhold.ShutterSpeed;

namespace Handhold.Tables.Tests;

public class WriterTests
{
    private static readonly FrameTable s_table =
    [
        new(OneOver(60), 6, 5)
        {
            Conditions = new()
            {
                Setup = "=1+1",
                Order = -3,
                FocalLength = 35.5,
            },
        },
        new(FromSeconds(1.3), 4, 0)
        {
            Unjudged = 2,
            Conditions = new() { Setup = "a, \"b\"", Others = Other("lamp", "-warm") },
        },
    ];

    [Fact]
    public void A_table_is_written_for_people_and_programs() =>
        Assert.Equal(
            "exposure,frames,keepers,unjudged,setup,order,focal_mm,lamp\n"
                + "1/60 s,6,5,0,'=1+1,-3,35.5,\n"
                + "1.3 s,4,0,2,\"a, \"\"b\"\"\",,,'-warm\n",
            Text.Write(s_table)
        );

    [Fact]
    public void A_row_a_frame_says_yes_no_or_nothing_and_reads_back_to_the_same_counts()
    {
        using StringWriter text = new();
        TableWriter.WriteFrames(s_table, text);
        Assert.StartsWith(
            "exposure,keeper,setup,order,focal_mm,lamp\n1/60 s,yes,'=1+1,-3,35.5,\n",
            text.ToString(),
            StringComparison.Ordinal
        );
        var read = Text.Read(text.ToString());
        Assert.Equal((12, 10, 5, 2), (read.Count, read.Frames, read.Keepers, read.Unjudged));
        Assert.Equal(s_table.Pooled(), read.Pooled());
    }

    [Theory]
    [InlineData("=1+1")]
    [InlineData("+46 8 123")]
    [InlineData("-warm")]
    [InlineData("@home")]
    [InlineData("\tindented")]
    [InlineData("\rreturned")]
    [InlineData("'=quoted")]
    [InlineData("''=quoted twice")]
    [InlineData("'plain")]
    [InlineData("'")]
    public void Text_that_begins_like_a_formula_is_disarmed_and_comes_back(string text)
    {
        FrameTable table = [new(OneOver(60), 1, 1) { Conditions = new() { Setup = text } }];
        var written = Text.Write(table);
        Assert.DoesNotMatch("(^|,)\"?[=+@\t\r-]", written);
        Assert.Equal(table, Text.Read(written));
    }

    [Fact]
    public void Disarming_can_be_turned_off() =>
        Assert.Contains(",=1+1,-3,", Text.Write(s_table, spreadsheetSafe: false), StringComparison.Ordinal);

    [Fact]
    public void No_exposure_is_written_like_a_date_or_a_bare_number() =>
        Assert.All(
            Text.Write([.. MarkedSpeeds.Series(Marks.Third).Select(s => new FrameCell(s, 1, 1))]).Split('\n')[1..^1],
            row => Assert.Matches("^[0-9./]+ s,", row)
        );

    [Fact]
    public void A_file_is_replaced_whole()
    {
        using var folder = new Folder();
        var path = folder.At("museum.csv");
        File.WriteAllText(path, "old");
        TableWriter.Write(s_table, path);
        Assert.Equal(s_table, TableReader.Read(path, cancellation: TestContext.Current.CancellationToken));
        Assert.Equal([path], Directory.GetFiles(folder.Path));
    }

    [Fact]
    public void A_table_that_cannot_be_written_leaves_the_old_file_as_it_was()
    {
        using var folder = new Folder();
        var path = folder.At("museum.csv");
        File.WriteAllText(path, "old");
        Assert.Throws<ArgumentException>(() =>
            TableWriter.Write([.. s_table, new(OneOver(60), 1, 1) { Conditions = new() { Setup = "a\0" } }], path)
        );
        Assert.Equal("old", File.ReadAllText(path));
        Assert.Equal([path], Directory.GetFiles(folder.Path));
    }

    [Theory]
    [InlineData("a\0b")]
    [InlineData("a\uD834b")]
    [InlineData("a\uFFFDb")]
    [InlineData("a\nb\rc\r\nd")]
    public void Text_that_could_not_be_read_back_is_refused(string text) =>
        Assert.Contains(
            "column setup",
            Assert.Throws<ArgumentException>(() => Text.Write([new(OneOver(60), 1, 1) { Conditions = new() { Setup = text } }])).Message,
            StringComparison.Ordinal
        );

    [Theory]
    [InlineData("frames")]
    [InlineData("Exposure")]
    [InlineData("sesion")]
    [InlineData(" lamp")]
    public void A_column_name_that_could_not_be_read_back_is_refused(string name) =>
        Assert.Contains(
            name,
            Assert
                .Throws<ArgumentException>(() => Text.Write([new(OneOver(60), 1, 1) { Conditions = new() { Others = Other(name, "a") } }]))
                .Message,
            StringComparison.Ordinal
        );

    [Fact]
    public void Column_names_that_differ_in_case_only_are_refused() =>
        Assert.Throws<ArgumentException>(() =>
            Text.Write([new(OneOver(60), 1, 1) { Conditions = new() { Others = Other("lamp", "a").Add("Lamp", "b") } }])
        );

    private static ImmutableSortedDictionary<string, string> Other(string name, string text) => Conditions.None.Others.Add(name, text);

    private sealed class Folder : IDisposable
    {
        public string Path { get; } = Directory.CreateTempSubdirectory("handhold-").FullName;

        public string At(string name) => System.IO.Path.Combine(Path, name);

        public void Dispose() => Directory.Delete(Path, recursive: true);
    }
}
