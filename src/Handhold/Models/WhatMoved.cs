using System.Collections.Immutable;

namespace Handhold.Models;

/// <summary>The model of one curve's half point and steepness under the conditions of its frames, with the priors of its effects.</summary>
/// <remarks>See <see cref="Setting"/> for the formula, and the methods page on terms for its sources.</remarks>
internal sealed partial class WhatMoved
{
    private readonly ImmutableArray<WhatMovedPart> _parts;
    private readonly ImmutableArray<DesignTerm> _terms;
    private readonly ImmutableHashSet<string> _steepening;
    private readonly int _handSpeed;
    private readonly bool _close;
    private readonly bool _subject;

    private WhatMoved(
        ImmutableArray<Effect> effects,
        ImmutableArray<WhatMovedPart> parts,
        ImmutableArray<DesignTerm> terms,
        ImmutableHashSet<string> steepening,
        (bool Close, bool Subject, int HandSpeed) motion
    )
    {
        (Effects, _parts, _terms, _steepening) = (effects, parts, terms, steepening);
        (_close, _subject, _handSpeed) = motion;
    }

    /// <summary>A curve without terms.</summary>
    internal static WhatMoved Nothing(NormalPrior halfPoint) =>
        new([], [], [], [], (false, false, -1))
        {
            Terms = [],
            Balanced = [],
            Tau0 = halfPoint,
            Shared = Conditions.None,
        };

    internal ImmutableArray<Effect> Effects { get; }

    /// <summary>What a question must say.</summary>
    internal required ImmutableArray<CurveTerm> Terms { get; init; }

    /// <summary>Effects of levels whose shifts sum to zero, column by column.</summary>
    internal required ImmutableArray<ImmutableArray<int>> Balanced { get; init; }

    /// <summary>Prior of tau0: where every term is neutral, and all else as it was.</summary>
    internal required NormalPrior Tau0 { get; init; }

    /// <summary>What all frames have in common.</summary>
    internal required Conditions Shared { get; init; }

    /// <summary>Whether translation of the hands counts: frames were shot close.</summary>
    internal bool Close => _close;

    internal bool HasFirstFrame => Terms.Any(t => t.Name == "firstFrame");

    /// <summary>Whether a term's effect depends on the rate, since it changes the steepness.</summary>
    internal bool ChangesSteepness(string term) => _steepening.Contains(term);

    /// <summary>The effects of a term, or the one of this name; none where there is no such term.</summary>
    internal ImmutableArray<int> EffectsOf(string term) => [.. Effects.Index().Where(e => IsOf(term, e.Item.Name)).Select(e => e.Index)];

    /// <summary>Whether an effect is one of a term, or has its name.</summary>
    internal bool IsOf(string term, string effect) =>
        effect == term
        || (
            _terms.Any(t => t.Name == term)
            && effect.StartsWith(term + "=", StringComparison.Ordinal)
            && !effect.Contains('×', StringComparison.Ordinal)
        );

    /// <summary>How many labels of these conditions are not the references.</summary>
    internal int FromReference(Conditions conditions) => _terms.Sum(t => t.FromReference(conditions));

    /// <summary>Takes from levels that sum to zero their mean, which no frame shows.</summary>
    internal void Balance(Span<double> effects)
    {
        foreach (var levels in Balanced)
        {
            var mean = 0.0;
            foreach (var level in levels)
                mean += effects[level] / levels.Length;
            foreach (var level in levels)
                effects[level] -= mean;
        }
    }

    /// <summary>Prior of an effect as it is reported.</summary>
    internal NormalPrior Prior(int effect) =>
        Balanced.FirstOrDefault(levels => levels.Contains(effect)) is { IsDefault: false } levels
            ? new(0, Effects[effect].Prior.StandardDeviation * Math.Sqrt(1 - 1.0 / levels.Length))
            : Effects[effect].Prior;

    /// <summary>What conditions do to the curve.</summary>
    /// <exception cref="ConditionsException">The conditions lack a term, or have a level that no frame had.</exception>
    internal Setting Read(Conditions conditions)
    {
        var (turning, shifting, steepening) = (New(), New(), New());
        foreach (var part in _parts)
        {
            var into =
                part.Kind == PartKind.Turning ? turning
                : part.Kind == PartKind.Shifting ? shifting
                : steepening;
            foreach (var (effect, weight) in part.Weights(conditions))
                if (weight != 0)
                    into.Add((effect, weight));
        }

        var magnification = _close ? Magnification(conditions) : 0;
        var speed = _subject ? conditions.SubjectSpeed ?? 0 : 0;
        var blur = Criterion.PermittedBlur(conditions.Criterion, conditions.Crop, conditions.PixelPitch) / 1000; // mm
        return new(
            turning.ToImmutable(),
            shifting.ToImmutable(),
            steepening.ToImmutable(),
            magnification > 0 ? Math.Log2(blur / magnification) : null,
            _handSpeed,
            magnification > 0 && speed > 0 ? Math.Log2(blur / (magnification * speed)) : null
        );

        static ImmutableArray<(int, double)>.Builder New() => ImmutableArray.CreateBuilder<(int, double)>();
    }

    internal static double Magnification(Conditions conditions) =>
        conditions.EffectiveMagnification
        ?? throw new ConditionsException(
            "magnification",
            "The answer depends on magnification, and it was not said for which.",
            "Set magnification, 0 for a far subject."
        );
}
