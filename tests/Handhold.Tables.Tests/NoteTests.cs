namespace Handhold.Tables.Tests;

public class NoteTests
{
    [Fact]
    public void A_side_table_says_conditions_and_anything_else_by_name()
    {
        var notes = Read("folder;stabiliser_mode;magnification\nmonday;off;0,5\n\n# a remark\ntuesday;;\n");
        Assert.Equal([2, 5], notes.Select(note => note.Line));
        Assert.Equal(
            ("monday", "off", 0.5),
            (notes[0].Conditions["folder"], notes[0].Conditions.StabiliserMode, notes[0].Conditions.Magnification)
        );
        Assert.Null(notes[1].Conditions.StabiliserMode);
    }

    [Theory]
    [InlineData("exposure", "folder,exposure\na,1/60\n")]
    [InlineData("keeper", "folder,keeper\na,yes\n")]
    [InlineData("stabilizer_mode", "folder,stabilizer_mode\na,off\n")]
    [InlineData("magnification", "folder,magnification\na,big\n")]
    public void What_a_side_table_cannot_say_is_refused_by_column(string column, string table) =>
        Assert.Equal(column, Assert.Single(Assert.Throws<TableException>(() => Read(table)).Errors).Column);

    private static System.Collections.Immutable.ImmutableArray<TableNote> Read(string table)
    {
        var path = Path.GetTempFileName();
        try
        {
            File.WriteAllText(path, table);
            return TableReader.ReadNotes(path, cancellation: TestContext.Current.CancellationToken);
        }
        finally
        {
            File.Delete(path);
        }
    }
}
