using System.Collections.Immutable;

namespace Handhold.Curves;

/// <summary>What levels drawn anew do to a curve: log b grows normally, and given that the half point is shifted normally.</summary>
/// <param name="LogB">Standard deviation of the growth of log b.</param>
/// <param name="PerDeviate">Shift of the half point for one standard deviation of log b, stops.</param>
/// <param name="ShiftSd">Standard deviation of the shift that is left, stops.</param>
internal readonly record struct LevelsAnew(double LogB, double PerDeviate, double ShiftSd)
{
    /// <summary>Levels of some groupings, whose effects add up.</summary>
    internal static LevelsAnew Of(ImmutableArray<int> groupings, ImmutableArray<LevelLoading> loadings)
    {
        var (tau, logB, both) = (0.0, 0.0, 0.0);
        foreach (var g in groupings)
        {
            tau += loadings[g].Tau * loadings[g].Tau;
            logB += loadings[g].LogB * loadings[g].LogB;
            both += loadings[g].Tau * loadings[g].Steep0;
        }

        return logB == 0
            ? new(0, 0, Math.Sqrt(tau))
            : new(Math.Sqrt(logB), both / Math.Sqrt(logB), Math.Sqrt(Math.Max(0, tau - both * both / logB)));
    }

    /// <summary>Mean shift, and growth of log b, at a standard normal deviate.</summary>
    internal (double Shift, double Steepening) At(double deviate) => (PerDeviate * deviate, LogB * deviate);
}
