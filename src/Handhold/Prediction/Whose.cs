namespace Handhold;

/// <summary>Whose keeper rate is meant, where levels such as photographers and setups were fitted together.</summary>
public enum Whose
{
    /// <summary>Of the levels that the conditions name: this photographer with this setup.</summary>
    This,

    /// <summary>Of a level in the middle, whose effects are zero: half of all levels are better.</summary>
    Typical,

    /// <summary>Of a setup not tested yet, in the hands of the photographer that the conditions name.</summary>
    NewSetup,

    /// <summary>Of a photographer not tested yet, with a setup not tested yet.</summary>
    NewPhotographer,

    /// <summary>On average over all photographers and setups, each frame another one's.</summary>
    Population,
}
