using System.Collections.Immutable;
using Handhold.Kernels;
using Handhold.Randomness;

namespace Handhold.Diagnostics;

/// <summary>What one burst, or the frames of equal conditions that share no burst, do to a curve.</summary>
public sealed class CellCheck
{
    internal CellCheck(ImmutableArray<FrameCell> cells) => Cells = cells;

    /// <summary>The normal deviate of a chance drawn evenly between those of fewer and of no more.</summary>
    internal static double RandomisedQuantile(double fewer, double exactly, RandomStream chance) =>
        Normal.Quantile(Math.Clamp(fewer + chance.Uniform() * exactly, 1e-300, 1 - 1e-16));

    /// <summary>Its frames.</summary>
    public ImmutableArray<FrameCell> Cells { get; }

    /// <summary>Frames in it.</summary>
    public int Frames => Cells.Sum(c => c.Frames);

    /// <summary>Keepers in it.</summary>
    public int Keepers => Cells.Sum(c => c.Keepers);

    /// <summary>Randomised-quantile residual, standard normal when the curve is right: its count against the law that all other frames give it; null where they leave nothing finite.</summary>
    /// <remarks>Φ⁻¹(P(fewer) + u P(as many)), u uniform from the seed: Dunn and Smyth (1996), Journal of Computational and Graphical Statistics 5, 236-244.</remarks>
    public double? Residual { get; internal init; }

    /// <summary>How many of the curve's free numbers it fixes, from 0: of a posterior the variance of its log-likelihood, otherwise its entry of the hat matrix; null where nothing finite was fitted.</summary>
    /// <remarks>Sources: Watanabe (2010), Journal of Machine Learning Research 11, 3571-3594; Pregibon (1981), Annals of Statistics 9, 705-724.</remarks>
    public double? Leverage { get; internal init; }

    /// <summary>How many stops slower the asked exposure gets when it is left out; null where that leaves nothing finite.</summary>
    public Stops? Influence { get; internal init; }

    /// <summary>Log of the chance that all other frames give to what it showed, frame by frame (Bernoulli scale); null where they leave nothing finite.</summary>
    public double? LogPredictiveDensity { get; internal init; }

    /// <summary>False where leaving it out changes a posterior so much that points made with it cannot stand for the posterior without it (Pareto k above 0.7).</summary>
    public bool IsReliable { get; internal init; } = true;
}
