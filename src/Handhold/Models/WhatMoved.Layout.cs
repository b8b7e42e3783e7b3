using System.Collections.Immutable;

namespace Handhold.Models;

internal sealed partial class WhatMoved
{
    private const string SubjectSpeed = "subject_speed_mm_s";

    /// <summary>Whether the posterior of these frames has terms.</summary>
    internal static bool IsCalledFor(KeeperModel model, IReadOnlyCollection<Conditions> frames) =>
        !model.PoolConditions && (!TermChoice.Of(model, frames).IsEmpty || SpeedsVary(frames));

    /// <summary>Columns in which frames may differ, since terms account for it.</summary>
    internal static ImmutableHashSet<string> Explained(KeeperModel model, IReadOnlyCollection<Conditions> frames)
    {
        var explained = TermChoice.Explained(model, frames);
        return IsClose(model, frames) ? explained.Add(SubjectSpeed) : explained;
    }

    /// <summary>The model of a curve's frames.</summary>
    /// <exception cref="CellException">A term cannot be told from these frames.</exception>
    internal static WhatMoved Of(KeeperModel model, ImmutableArray<FrameCell> cells, string place)
    {
        Conditions[] frames = [.. cells.Select(c => c.Conditions).Distinct()];
        ImmutableArray<DesignTerm> terms = [.. TermChoice.Of(model, frames).Select(source => DesignTerm.Of(source, cells, place))];
        WhatMovedPlan plan = new(model.Priors, cells);
        var shared = Conditions.Shared(frames);
        var neutral = shared;
        foreach (var term in terms)
        {
            plan.Term(term);
            neutral = term.Name switch
            {
                "focal" => neutral with { FocalLength = null, Crop = null, EquivalentFocalLength = 50, SubjectDistance = null },
                "stabiliser" => neutral with { StabiliserMode = "off", StabiliserStops = 0 },
                "subjectMotion" => neutral with { SubjectMotion = null },
                _ => neutral,
            };
        }

        var steepening = ImmutableHashSet.CreateBuilder<string>(StringComparer.Ordinal);
        foreach (var (first, second) in model.Products)
        {
            if (first != KeeperModel.ExposureTerm && second != KeeperModel.ExposureTerm)
            {
                plan.Product(Named(first), Named(second));
                continue;
            }

            var other = Named(first == KeeperModel.ExposureTerm ? second : first);
            plan.Product(other, null);
            steepening.Add(other.Name);
        }

        var (close, handSpeed) = (IsClose(model, frames), -1);
        if (close)
        {
            var anchor = model.Priors.Anchor;
            plan.Turning("magnification", anchor.Magnification, conditions => -Math.Log2(1 + Magnification(conditions)));
            handSpeed = plan.Add(
                "log2HandSpeed",
                new(Math.Log2(anchor.HandSpeed.Median), anchor.HandSpeed.LogStandardDeviation / Math.Log(2))
            );
        }

        if (close)
            neutral = neutral with { SubjectSpeed = null };
        neutral = neutral with { Magnification = close || neutral.EffectiveMagnification is not null ? 0 : null, SubjectDistance = null };
        return new(
            plan.Effects,
            plan.Parts,
            terms,
            steepening.ToImmutable(),
            (close, close && frames.Any(f => f.SubjectSpeed > 0), handSpeed)
        )
        {
            Terms = [.. terms.Select(t => new CurveTerm(t.Name, t.Sources, Levels(t, frames))), .. Speeds(close, frames)],
            Balanced = plan.Balanced,
            Tau0 = model.Priors.HalfPoint ?? PriorAnchor.For(neutral, model.Priors.Anchor),
            Shared = shared,
        };

        DesignTerm Named(string part) =>
            terms.FirstOrDefault(t => t.Name == part)
            ?? throw new CellException(
                place,
                $"a product names {part}, which is no term of it.",
                $"Name {part} among the terms as well (--term {part})."
            );
    }

    /// <summary>Translation of the hands counts where every frame's magnification is known and some are not far, unless the user named terms without it.</summary>
    private static bool IsClose(KeeperModel model, IReadOnlyCollection<Conditions> frames) =>
        frames.All(f => f.EffectiveMagnification is not null)
        && frames.Any(f => f.EffectiveMagnification > 0)
        && (
            model.Terms.IsEmpty
            || model.Terms.Contains("magnification")
            || frames.Select(f => f.EffectiveMagnification).Distinct().Count() == 1
        );

    private static bool SpeedsVary(IReadOnlyCollection<Conditions> frames) =>
        frames.All(f => f.EffectiveMagnification is not null) && frames.Select(f => f.SubjectSpeed).Distinct().Count() > 1;

    /// <summary>Of a stabiliser its modes, also where its rated stops make it a number.</summary>
    private static ImmutableArray<string> Levels(DesignTerm term, Conditions[] frames) =>
        term.Name == "stabiliser" && WhatMovedPlan.Modes(frames) is var modes && !modes.Contains("")
            ? [.. modes.Prepend("off")]
            : term.Levels;

    private static IEnumerable<CurveTerm> Speeds(bool close, Conditions[] frames) =>
        close && SpeedsVary(frames) ? [new("subjectSpeed", [SubjectSpeed], [])] : [];
}
