using Handhold.Curves;

namespace Handhold.Prediction;

/// <summary>The law of the levels that are meant, of a posterior.</summary>
internal static class VaryingLaw
{
    /// <exception cref="ConditionsException">It was not said whose rate is meant, or a level or day is not named or unknown.</exception>
    internal static IRateLaw Of(VaryingPosterior varying, KeeperCurve curve, AnswerOptions options)
    {
        var conditions = options.Conditions.Or(varying.Moved.Shared);
        var meant = LevelsMeant.By(options.Whose, [.. varying.Spreads.Select(s => s.Grouping)], conditions);
        if (options.Day == Day.Same && curve.Model.Luck != LuckKind.None)
            return varying.With([.. meant.Known, (varying.Days, TestedDay.Of(curve, conditions))], meant.Fresh).At(conditions).Habitual;
        var posterior = varying.With(meant.Known, meant.Fresh).At(conditions);
        return options.Day == Day.Same ? posterior.Habitual : posterior.AnotherDay;
    }
}
