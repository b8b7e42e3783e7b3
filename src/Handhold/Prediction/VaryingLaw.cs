using System.Collections.Immutable;
using Handhold.Curves;
using Handhold.Fitting;
using Handhold.Models;

namespace Handhold.Prediction;

/// <summary>The law of the levels that are meant, of a posterior.</summary>
internal static class VaryingLaw
{
    /// <summary>The law, and how well the points stand for the levels it is of; null where none are known.</summary>
    /// <exception cref="ConditionsException">It was not said whose rate is meant, or a level or day is not named or unknown.</exception>
    internal static (IRateLaw Law, Sampling? Sampling) Of(VaryingPosterior varying, KeeperCurve curve, AnswerOptions options)
    {
        var conditions = options.Conditions.Or(varying.Moved.Shared);
        if (options.Whose == Whose.Population)
            return (new PopulationLaw(varying, conditions), null);
        var (meant, another) = (
            LevelsMeant.By(options.Whose, Groupings(varying), conditions),
            options.Day == Day.Another || curve.Model.Luck == LuckKind.None
        );
        var known = another ? meant.Known : [.. meant.Known, (varying.Days, TestedDay.Of(curve, conditions))];
        var levels = varying.With(known, meant.Fresh);
        var posterior = levels.At(conditions);
        return (another ? posterior.AnotherDay : posterior.Habitual, known.IsEmpty ? null : levels.Sampling);
    }

    /// <summary>The posterior of a curve, or of the levels of it that are meant.</summary>
    /// <exception cref="ConditionsException">It was not said whose rate is meant, or a level is not named or unknown.</exception>
    internal static CurvePosterior Posterior(KeeperCurve curve, AnswerOptions options)
    {
        if (curve.Varying is not { } varying)
            return curve.PosteriorUnder(options.Conditions);
        var conditions = options.Conditions.Or(varying.Moved.Shared);
        var meant = LevelsMeant.By(options.Whose, Groupings(varying), conditions);
        return varying.With(meant.Known, meant.Fresh).At(conditions);
    }

    /// <summary>Change of the exposure for a rate between two sides; null where a side may not reach it.</summary>
    /// <exception cref="ConditionsException">It was not said whose rate is meant, or a level is not named or unknown.</exception>
    internal static WeightedValues? ExposureChange(
        VaryingPosterior varying,
        Whose? whose,
        Conditions from,
        Conditions to,
        double rate,
        bool otherDays
    )
    {
        var before = LevelsMeant.By(whose, Groupings(varying), from);
        var after = LevelsMeant.By(whose, Groupings(varying), to);
        return varying.ExposureChange((before.Known, from), (after.Known, to), before.Fresh, rate, otherDays);
    }

    /// <summary>What to say of a difference between levels that the points stand badly for.</summary>
    internal static ImmutableArray<Status> Remarks(KeeperCurve curve, Whose? whose, Conditions from, Conditions to)
    {
        if (curve.Varying is not { } varying)
            return [];
        ImmutableArray<(int, int)> known = [.. Known(from).Union(Known(to))];
        return !known.IsEmpty && VaryingStatuses.Of(varying.SamplingOf(known)) is { } rough ? [rough] : [];

        ImmutableArray<(int, int)> Known(Conditions side) => LevelsMeant.By(whose, Groupings(varying), side).Known;
    }

    private static ImmutableArray<Grouping> Groupings(VaryingPosterior varying) => [.. varying.Spreads.Select(s => s.Grouping)];
}
