using System.Collections.Immutable;

namespace Handhold.Models;

/// <summary>How the levels of a grouping vary on the scale of stops, and what is believed of it.</summary>
/// <param name="Grouping">The levels.</param>
/// <param name="Tau">Prior of the spread of half points, or of the effect of a term; null where they are alike.</param>
/// <param name="LogB">Prior of the spread of the logarithm of the steepness; null where it is alike.</param>
/// <param name="Correlation">Prior of their correlation; null where there is none.</param>
/// <param name="Effect">The effect that varies, rather than half points; null where it is them.</param>
internal sealed record LevelSpread(
    Grouping Grouping,
    HalfNormalPrior? Tau,
    HalfNormalPrior? LogB,
    LkjPrior? Correlation,
    int? Effect = null
)
{
    /// <summary>Numbers that say how it spreads.</summary>
    internal int Parameters => (Tau is null ? 0 : 1) + (LogB is null ? 0 : 1) + (Correlation is null ? 0 : 1);

    /// <exception cref="CellException">Nothing can be told of what is to vary.</exception>
    internal static ImmutableArray<LevelSpread> Of(KeeperModel model, WhatMoved moved, ImmutableArray<FrameCell> cells, string place)
    {
        var priors = model.Priors.Spreads;
        return
        [
            .. model.Varies.SelectMany(varying =>
                Grouping.Of(varying, cells, place) is var grouping && varying.Term is { } term
                    ? OfTerm(term, grouping, model, moved, cells, place)
                    :
                    [
                        new(
                            grouping,
                            varying.Part == VaryingPart.Exposure ? null : priors.Tau(varying.Column, model.Priors),
                            varying.Part == VaryingPart.Intercept ? null : priors.LogB(varying.Column),
                            varying.Part == VaryingPart.Both ? priors.Correlation : null
                        ),
                    ]
            ),
        ];
    }

    /// <summary>A spread for each effect of a term.</summary>
    private static IEnumerable<LevelSpread> OfTerm(
        string term,
        Grouping grouping,
        KeeperModel model,
        WhatMoved moved,
        ImmutableArray<FrameCell> cells,
        string place
    )
    {
        var (by, effects) = (grouping.Varying.Column, moved.EffectsOf(term));
        if (effects.IsEmpty)
            throw new CellException(
                place,
                $"{term} is to vary by {by}, and it is no term of it: {(moved.Effects.IsEmpty ? "it has none" : $"it has {Listing.And(moved.Effects.Select(e => e.Name))}")}.",
                $"Name a term of it, add this one (--term {term}), or let intercept or exposure vary."
            );
        var settings = cells
            .Select(c => (Level: grouping.LevelOf(c.Conditions), Setting: moved.Read(c.Conditions)))
            .Distinct()
            .ToLookup(c => c.Level);
        foreach (var effect in effects)
        {
            if (settings.All(level => level.Select(l => l.Setting.Weight(effect)).Distinct().Count() == 1))
                throw new CellException(
                    place,
                    $"the frames of each {by} are alike in {moved.Effects[effect].Name}, so how its effect differs between {by}s cannot be told from how they differ themselves.",
                    "Let another term vary, or shoot with it and without it."
                );
            if (
                model.Luck != LuckKind.None
                && cells.Where(c => c.Conditions.Burst is not null).GroupBy(Burst).Any(b => Weights(b, effect) > 1)
            )
                throw new CellException(
                    place,
                    $"{moved.Effects[effect].Name} is to vary by {by}, and changes within bursts, whose frames share their luck.",
                    "Leave luck out (--luck none), or let another term vary."
                );
            yield return new(
                grouping,
                new(model.Priors.Spreads.Term.Scale * moved.Effects[effect].Prior.StandardDeviation),
                null,
                null,
                effect
            );
        }

        int Weights(IEnumerable<FrameCell> frames, int effect) =>
            frames.Select(c => moved.Read(c.Conditions).Weight(effect)).Distinct().Count();

        static (string?, string?, string?, string?) Burst(FrameCell cell) =>
            (cell.Conditions.Photographer, cell.Conditions.Setup, cell.Conditions.Session, cell.Conditions.Burst);
    }
}
