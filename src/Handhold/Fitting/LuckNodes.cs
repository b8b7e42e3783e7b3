namespace Handhold.Fitting;

/// <summary>How fine and how far the nodes of a luck's sd are laid.</summary>
/// <param name="Halvings">How often the step, at first the prior's scale, was halved.</param>
/// <param name="Reach">Farthest node, in prior scales.</param>
internal readonly record struct LuckNodes(int Halvings, int Reach)
{
    private const int MostHalvings = 4;
    private const int Farthest = 32;
    private const double Matters = -12; // exp(-12) = 6e-6 of the top

    internal static LuckNodes Usual { get; } = new(0, 4);

    /// <summary>
    /// A sharp likelihood, blurred by session luck, changes its shape as soon as the luck exceeds its width: nodes no farther apart than 0.7 of that width.
    /// </summary>
    internal static LuckNodes ForSessions(HalfNormalPrior prior, double likelihoodSd) =>
        Usual with
        {
            Halvings = Math.Clamp((int)Math.Ceiling(Math.Log2(prior.Scale / (0.7 * likelihoodSd))), 0, MostHalvings),
        };

    internal HalfNormalGrid Grid(HalfNormalPrior prior, LuckKind luck) =>
        luck == LuckKind.None ? HalfNormalGrid.None : HalfNormalGrid.For(prior, Halvings, Reach);

    /// <summary>Finer when the log marginal bends too much between nodes, farther when it has not died out at the last one.</summary>
    internal LuckNodes Refined(double[] logs)
    {
        if (logs.Length == 1)
            return this;
        var bent = Walk.Curvature([.. logs.Skip(1).Reverse(), .. logs]) > Walk.TooCoarse && Halvings < MostHalvings;
        var cutOff = logs[^1] > logs.Max() + Matters && Reach < Farthest && logs[^1] - logs.Max() > -0.5 * Reach * Reach + 1.5;
        return new(bent ? Halvings + 1 : Halvings, cutOff ? 2 * Reach : Reach);
    }
}
