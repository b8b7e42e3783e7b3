namespace Handhold;

/// <summary>How well the weighted points of a posterior stand for it.</summary>
public sealed class Sampling
{
    internal Sampling(int points, double effectiveSize, double tail) => (Points, EffectiveSize, ParetoK) = (points, effectiveSize, tail);

    /// <summary>Weighted points.</summary>
    public int Points { get; }

    /// <summary>Independent draws of equal weight that would be as good, at most <see cref="Points"/>; their even spread is not counted.</summary>
    public double EffectiveSize { get; }

    /// <summary>Shape of the largest weights' tail: up to 0.7 the points can be trusted.</summary>
    public double ParetoK { get; }

    /// <summary>Whether answers from these points are approximate only.</summary>
    internal bool IsPoor => !(ParetoK <= 0.7) || !(EffectiveSize >= 400);
}
