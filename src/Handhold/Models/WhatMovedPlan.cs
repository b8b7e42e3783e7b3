using System.Collections.Immutable;

namespace Handhold.Models;

/// <summary>Lays out the effects of a curve's terms.</summary>
internal sealed class WhatMovedPlan
{
    private readonly ImmutableArray<Effect>.Builder _effects = ImmutableArray.CreateBuilder<Effect>();
    private readonly ImmutableArray<WhatMovedPart>.Builder _parts = ImmutableArray.CreateBuilder<WhatMovedPart>();
    private readonly ImmutableArray<ImmutableArray<int>>.Builder _balanced = ImmutableArray.CreateBuilder<ImmutableArray<int>>();
    private readonly ImmutableArray<FrameCell> _cells;
    private readonly Priors _priors;

    internal WhatMovedPlan(Priors priors, ImmutableArray<FrameCell> cells) => (_priors, _cells) = (priors, cells);

    internal ImmutableArray<Effect> Effects => _effects.ToImmutable();

    internal ImmutableArray<WhatMovedPart> Parts => _parts.ToImmutable();

    /// <summary>Effects of levels whose shifts sum to zero, column by column.</summary>
    internal ImmutableArray<ImmutableArray<int>> Balanced => _balanced.ToImmutable();

    internal int Add(string name, NormalPrior prior)
    {
        _effects.Add(new(name, prior));
        return _effects.Count - 1;
    }

    internal void Turning(string name, NormalPrior prior, Func<Conditions, double> weight)
    {
        var effect = Add(name, prior);
        _parts.Add(new(PartKind.Turning, conditions => [(effect, weight(conditions))]));
    }

    internal void Term(DesignTerm term)
    {
        switch (term.Name)
        {
            case "focal":
                Turning(term.Name, _priors.Anchor.FocalLength, conditions => -Values(term, conditions)[0]);
                break;
            case "magnification": // by rotation and by translation: see WhatMoved.Of
                break;
            case "stabiliser":
                Stabiliser();
                break;
            case "subjectMotion":
                Levels(term, Motion, c => c is { SubjectSpeed: not null, EffectiveMagnification: not null });
                break;
            case "firstFrame":
                var first = Add(term.Name, _priors.FirstFrame);
                _parts.Add(new(PartKind.Shifting, conditions => [(first, Values(term, conditions)[0])]));
                break;
            default:
                if (term.Levels.IsEmpty)
                    Number(PartKind.Shifting, term.Name, _priors.ColumnOverRange, conditions => Values(term, conditions)[0]);
                else
                    Levels(term, _ => null, _ => false);
                break;
        }
    }

    /// <summary>The product of two terms; <paramref name="second"/> is null for the exposure.</summary>
    internal void Product(DesignTerm first, DesignTerm? second)
    {
        for (var i = 0; i < first.Columns.Length; i++)
        {
            var column = i;
            if (second is null)
                Number(
                    PartKind.Steepening,
                    $"{DesignLayout.Exposure}×{first.Columns[i]}",
                    _priors.SteepnessOverRange,
                    conditions => Values(first, conditions)[column]
                );
            else
                for (var k = 0; k < second.Columns.Length; k++)
                {
                    var other = k;
                    Number(
                        PartKind.Shifting,
                        $"{first.Columns[i]}×{second.Columns[k]}",
                        _priors.ColumnOverRange,
                        conditions => Values(first, conditions)[column] * Values(second, conditions)[other]
                    );
                }
        }
    }

    /// <summary>A number, measured from its middle so that tau0 stays where the frames are; its prior is over the range seen.</summary>
    private void Number(PartKind kind, string name, NormalPrior overRange, Func<Conditions, double> value)
    {
        double[] seen = [.. _cells.Select(c => value(c.Conditions))];
        var (low, high) = (seen.Min(), seen.Max());
        if (low == high)
            return;
        var effect = Add(name, new(overRange.Mean / (high - low), overRange.StandardDeviation / (high - low)));
        var middle = low + (high - low) / 2;
        _parts.Add(new(kind, conditions => [(effect, value(conditions) - middle)]));
    }

    /// <summary>Levels: measured against the reference where there is a known one, otherwise summing to zero.</summary>
    private void Levels(DesignTerm term, Func<string, NormalPrior?> known, Predicate<Conditions> otherwiseKnown)
    {
        var anchored = term.Levels.Any(level => known(level) is not null);
        var effects = term
            .Levels.Where(level => known(level) is not { StandardDeviation: 0 })
            .ToImmutableDictionary(level => level, level => Add($"{term.Name}={level}", known(level) ?? _priors.ColumnLevel));
        if (!anchored)
            _balanced.Add([.. effects.Values.Order()]);
        _parts.Add(
            new(
                PartKind.Shifting,
                conditions =>
                    otherwiseKnown(conditions) || !effects.TryGetValue(term.LevelOf(conditions), out var effect) ? []
                    : anchored ? [(effect, 1)]
                    : [.. effects.Values.Select(e => (e, (e == effect ? 1 : 0) - 1.0 / effects.Count))]
            )
        );
    }

    /// <summary>Prior of a motion by its name; at zero for a still subject.</summary>
    private NormalPrior? Motion(string level) =>
        level switch
        {
            "still" => new(0, 0),
            "slight" => _priors.Anchor.SlightMotion,
            "brisk" => _priors.Anchor.BriskMotion,
            _ => null,
        };

    private void Stabiliser()
    {
        var on = _cells.Select(c => c.Conditions).Where(c => !IsOff(c)).ToArray();
        var modes = Modes(on);
        var named = modes is not [""];
        var effects = modes.ToImmutableDictionary(
            mode => mode,
            mode =>
            {
                var ratings = on.Where(c => Mode(c) == mode).Select(c => c.StabiliserStops).Distinct().ToArray();
                var rated = !ratings.Contains(null);
                var name = modes.Length == 1 ? "stabiliser" : $"stabiliser={mode}";
                var effect = Add(name, rated ? _priors.Anchor.RatedStop : _priors.Anchor.UnratedStabiliser);
                return (Effect: effect, Rated: rated, Usual: ratings is [var only] ? only : null);
            }
        );
        _parts.Add(new(PartKind.Turning, conditions => IsOff(conditions) ? [] : [Weight(conditions)]));

        (int, double) Weight(Conditions conditions)
        {
            var mode =
                !named ? ""
                : conditions.StabiliserMode is null && modes is [var only] && conditions.StabiliserStops is not null ? only
                : Mode(conditions);
            if (!effects.TryGetValue(mode, out var found))
                throw Strange(conditions.StabiliserMode, "stabiliser_mode", string.Join(" or ", modes.Prepend("off")));
            var stops = conditions.StabiliserStops ?? found.Usual;
            if (found.Rated && (stops is null || !named && conditions.StabiliserStops is null && conditions.StabiliserMode is null))
                throw Strange(null, "stabiliser_stops", "its rated stops in use, 0 for off");
            return (found.Effect, found.Rated ? stops!.Value : 1);
        }

        static ConditionsException Strange(string? mode, string column, string remedy) =>
            new(
                "stabiliser",
                mode is null
                    ? "The answer depends on the stabiliser, and it was not said for which."
                    : $"No frame had {mode} as its stabiliser_mode.",
                $"Set {column} to {remedy}."
            );
    }

    /// <summary>Modes of the stabiliser where it was on, in byte order; an empty one where none was recorded.</summary>
    internal static ImmutableArray<string> Modes(IEnumerable<Conditions> frames) =>
        [.. frames.Where(c => !IsOff(c)).Select(Mode).Distinct().Order(StringComparer.Ordinal)];

    private static bool IsOff(Conditions c) => c.EffectiveStabiliserStops == 0;

    private static string Mode(Conditions c) => c.StabiliserMode ?? "";

    private static double[] Values(DesignTerm term, Conditions conditions)
    {
        var values = new double[term.Columns.Length];
        term.Read(conditions, values);
        return values;
    }
}
