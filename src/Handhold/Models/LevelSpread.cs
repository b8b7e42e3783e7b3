using System.Collections.Immutable;

namespace Handhold.Models;

/// <summary>How the levels of a grouping vary on the scale of stops, and what is believed of it.</summary>
/// <param name="Grouping">The levels.</param>
/// <param name="Tau">Prior of the spread of half points; null where they are alike.</param>
/// <param name="LogB">Prior of the spread of the logarithm of the steepness; null where it is alike.</param>
/// <param name="Correlation">Prior of their correlation; null where there is none.</param>
internal sealed record LevelSpread(Grouping Grouping, HalfNormalPrior? Tau, HalfNormalPrior? LogB, LkjPrior? Correlation)
{
    /// <summary>Numbers that say how it spreads.</summary>
    internal int Parameters => (Tau is null ? 0 : 1) + (LogB is null ? 0 : 1) + (Correlation is null ? 0 : 1);

    internal static ImmutableArray<LevelSpread> Of(KeeperModel model, ImmutableArray<FrameCell> cells, string place)
    {
        var priors = model.Priors.Spreads;
        return
        [
            .. model.Varies.Select(varying => new LevelSpread(
                Grouping.Of(varying, cells, place),
                varying.Part == VaryingPart.Exposure ? null : priors.Tau(varying.Column, model.Priors),
                varying.Part == VaryingPart.Intercept ? null : priors.LogB(varying.Column),
                varying.Part == VaryingPart.Both ? priors.Correlation : null
            )),
        ];
    }
}
