namespace Handhold;

/// <summary>Equal bursts, each with a fresh grip, that do what one long burst does.</summary>
public sealed class ShootSplit
{
    internal ShootSplit(int bursts, int burstsOf, double assurance) => (Bursts, BurstsOf, Assurance) = (bursts, burstsOf, assurance);

    /// <summary>Number of bursts.</summary>
    public int Bursts { get; }

    /// <summary>Frames in each.</summary>
    public int BurstsOf { get; }

    /// <summary>Frames in all: what must be shot and judged.</summary>
    public int Frames => Bursts * BurstsOf;

    /// <summary>Assurance attained.</summary>
    public double Assurance { get; }
}
