namespace Handhold.Curves;

/// <summary>Keepers of one burst.</summary>
internal interface IBurstLaw
{
    /// <summary>P(at least <paramref name="keepers"/> of <paramref name="frames"/> frames of one burst).</summary>
    double AtLeast(int keepers, int frames);

    /// <summary>P(exactly <paramref name="keepers"/> of <paramref name="frames"/>).</summary>
    double Exactly(int keepers, int frames);
}
