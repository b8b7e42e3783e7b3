namespace Handhold.Tables;

/// <summary>What the rows of a table say.</summary>
internal enum TableKind
{
    /// <summary>Frames that were shot.</summary>
    Frames,

    /// <summary>Conditions of frames that stand elsewhere.</summary>
    Notes,
}
