using System.Runtime.CompilerServices;
using System.Runtime.Intrinsics;

namespace Handhold.Fitting;

/// <summary>Log-likelihoods at eight places at once, and their derivatives in the shift t of the half point and the growth l of the log steepness.</summary>
internal struct LevelSlopes
{
    internal Vector512<double> Value;
    internal Vector512<double> T;
    internal Vector512<double> L;
    internal Vector512<double> TT;
    internal Vector512<double> TL;
    internal Vector512<double> LL;

    /// <summary>Adds what derivatives in η = b (tau - x) come to: η grows by b with t and by η with l.</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    internal void Add(Vector512<double> steepness, Vector512<double> eta, Vector512<double> first, Vector512<double> second)
    {
        var bent = eta * second + first;
        T += steepness * first;
        L += eta * first;
        TT += steepness * steepness * second;
        TL += steepness * bent;
        LL += eta * bent;
    }

    /// <summary>Adds so many times the logarithm of a chance that rises with a mean, so much a unit of it.</summary>
    internal void AddLog(int times, Vector512<double> chance, double rise, in LevelSlopes mean)
    {
        var by = Vector512.Create(rise) / chance;
        var (t, l) = (by * mean.T, by * mean.L);
        Value += Vector512.Log(chance) * times;
        T += t * times;
        L += l * times;
        TT += (by * mean.TT - t * t) * times;
        TL += (by * mean.TL - t * l) * times;
        LL += (by * mean.LL - l * l) * times;
    }

    /// <summary>Adds a node of an integral that <see cref="Integrated"/> finishes: not its value, and of its derivatives what weighs so much.</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    internal void AddShare(Vector512<double> share, in LevelSlopes node)
    {
        T += share * node.T;
        L += share * node.L;
        TT += share * (node.TT + node.T * node.T);
        TL += share * (node.TL + node.T * node.L);
        LL += share * (node.LL + node.L * node.L);
    }

    /// <summary>Turns the nodes that were added into the logarithm of their sum, and its derivatives: the mean of theirs, and their covariance.</summary>
    internal void Integrated(Vector512<double> top, Vector512<double> total)
    {
        Value = top + Vector512.Log(total);
        T /= total;
        L /= total;
        TT = TT / total - T * T;
        TL = TL / total - T * L;
        LL = LL / total - L * L;
    }

    internal void Add(in LevelSlopes other)
    {
        Value += other.Value;
        T += other.T;
        L += other.L;
        TT += other.TT;
        TL += other.TL;
        LL += other.LL;
    }
}
