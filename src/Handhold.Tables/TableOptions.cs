namespace Handhold.Tables;

/// <summary>How a table is read. The limits keep a broken or hostile file from filling the memory; each is named in its error.</summary>
public sealed record TableOptions
{
    /// <summary>The options used when none are given.</summary>
    public static TableOptions Default { get; } = new();

    /// <summary>
    /// From which grade up a frame is a keeper, 1 or more. Set, the <c>grade</c> column gives the verdicts; null, the <c>keeper</c> column
    /// or the counts do.
    /// </summary>
    public int? KeeperFromGrade { get; init; }

    /// <summary>Most characters in a file, counted after decoding (never more than its bytes). Default 67 108 864.</summary>
    public long MaxCharacters { get; init; } = 1L << 26;

    /// <summary>Most rows below the header. Default 1 000 000.</summary>
    public int MaxRows { get; init; } = 1_000_000;

    /// <summary>Most columns. Default 1000.</summary>
    public int MaxColumns { get; init; } = 1000;

    /// <summary>Most characters in a row, at most 4 194 304. Default 1 048 576.</summary>
    public int MaxRowLength { get; init; } = 1 << 20;

    /// <summary>Most characters in a cell. Default 10 000.</summary>
    public int MaxFieldLength { get; init; } = 10_000;

    internal void Check()
    {
        if (KeeperFromGrade is { } grade)
        {
            ArgumentOutOfRangeException.ThrowIfLessThan(grade, 1, nameof(KeeperFromGrade));
        }
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(MaxCharacters, nameof(MaxCharacters));
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(MaxRows, nameof(MaxRows));
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(MaxColumns, nameof(MaxColumns));
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(MaxRowLength, nameof(MaxRowLength));
        ArgumentOutOfRangeException.ThrowIfGreaterThan(MaxRowLength, 1 << 22, nameof(MaxRowLength));
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(MaxFieldLength, nameof(MaxFieldLength));
    }
}
