namespace Handhold;

/// <summary>How frames share luck.</summary>
public enum LuckKind
{
    /// <summary>A session and a burst each shift the curve by a normal number of stops.</summary>
    Normal,

    /// <summary>Frames are independent.</summary>
    None,
}
