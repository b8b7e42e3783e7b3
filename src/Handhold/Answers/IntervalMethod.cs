namespace Handhold;

/// <summary>How an interval of an exposure is made from a likelihood.</summary>
public enum IntervalMethod
{
    /// <summary>The values that a (penalised) likelihood-ratio test does not reject.</summary>
    Profile,

    /// <summary>Fieller's theorem on the ratio of two estimates: exact for normal estimates, and unbounded where the slope is not established.</summary>
    Fieller,

    /// <summary>Estimate and standard error by the delta method: always bounded, and poor in small tests.</summary>
    Delta,
}
