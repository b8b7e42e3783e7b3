namespace Handhold;

/// <summary>How frames share luck.</summary>
public enum LuckKind
{
    /// <summary>Of the posterior: a session and a burst each shift the curve by a normal number of stops. Of the likelihood: a burst shifts the link's scale by a normal number.</summary>
    Normal,

    /// <summary>Frames are independent.</summary>
    None,

    /// <summary>The frames of a burst share a rate drawn from a beta distribution, so that two of them are correlated alike at any speed; likelihood only.</summary>
    BetaBinomial,
}
