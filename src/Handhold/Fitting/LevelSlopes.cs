namespace Handhold.Fitting;

/// <summary>A log-likelihood and its derivatives in the shift t of the half point and the growth l of the log steepness.</summary>
internal record struct LevelSlopes(double Value, double T, double L, double TT, double TL, double LL)
{
    internal void Add(in LevelSlopes other)
    {
        Value += other.Value;
        T += other.T;
        L += other.L;
        TT += other.TT;
        TL += other.TL;
        LL += other.LL;
    }

    /// <summary>Adds what derivatives in η = b (tau - x) come to: η grows by b with t and by η with l.</summary>
    internal void Add(double steepness, double eta, double first, double second)
    {
        T += steepness * first;
        L += eta * first;
        TT += steepness * steepness * second;
        TL += steepness * (eta * second + first);
        LL += eta * (eta * second + first);
    }
}
