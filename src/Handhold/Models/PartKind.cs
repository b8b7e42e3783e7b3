namespace Handhold.Models;

/// <summary>Where an effect enters.</summary>
internal enum PartKind
{
    /// <summary>The rotation of the camera.</summary>
    Turning,

    /// <summary>The half point, whatever moved.</summary>
    Shifting,

    /// <summary>The logarithm of the steepness.</summary>
    Steepening,
}
