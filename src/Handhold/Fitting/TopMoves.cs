namespace Handhold.Fitting;

/// <summary>How the top of a finest level follows what shifts and steepens its parts from above, to first order.</summary>
/// <param name="above">Of each part its shift, then its steepening, at the top.</param>
/// <param name="by">The moves of the level's numbers by each of those.</param>
internal readonly struct TopMoves(double[] above, (double D0, double D1)[] by)
{
    /// <summary>The top where they are others; as wide as it was.</summary>
    internal LevelTop Follow(LevelTop top, ReadOnlySpan<double> others)
    {
        for (var i = 0; i < above.Length; i++)
        {
            var change = others[i] - above[i];
            top = top with { Z0 = top.Z0 + change * by[i].D0, Z1 = top.Z1 + change * by[i].D1 };
        }

        return top;
    }
}
