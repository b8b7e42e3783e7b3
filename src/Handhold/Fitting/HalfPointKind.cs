namespace Handhold.Fitting;

/// <summary>Of which half point a density speaks.</summary>
internal enum HalfPointKind
{
    /// <summary>Without the luck of a day.</summary>
    Habitual,

    /// <summary>On a day with luck of its own.</summary>
    AnotherDay,

    /// <summary>On the tested day.</summary>
    SameDay,
}
