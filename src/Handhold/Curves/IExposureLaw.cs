namespace Handhold.Curves;

/// <summary>A posterior's law: it gives the exposures that have a rate as a distribution.</summary>
internal interface IExposureLaw : IRateLaw
{
    /// <summary>The exposures, log2 seconds, that have the rate; minus infinity where the rate is above the ceiling, infinity below the floor.</summary>
    HalfPointMixture ExposureFor(double rate);
}
