namespace Handhold.Tables;

/// <summary>A row of a side table: conditions of frames that stand elsewhere.</summary>
public sealed class TableNote
{
    internal TableNote(int line, Conditions conditions) => (Line, Conditions) = (line, conditions);

    /// <summary>The line in the file, from 1.</summary>
    public int Line { get; }

    /// <summary>What the row says; a column without a meaning of its own is among <see cref="Conditions.Others"/>.</summary>
    public Conditions Conditions { get; }
}
