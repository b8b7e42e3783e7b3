using System.Collections.Immutable;
using Handhold.Curves;

namespace Handhold.Prediction;

/// <summary>The law of the levels that are meant.</summary>
internal static class WhoseLaw
{
    /// <exception cref="ConditionsException">It was not said whose rate is meant, or a level is not named or unknown.</exception>
    internal static ILineLaw Of(LinearFit linear, AnswerOptions options)
    {
        var conditions = options.Conditions.Or(linear.SharedConditions);
        if (linear.Likelihood.Grouped is not { Layout: var layout } || options.Whose == Whose.Typical)
            return new ProfileLaw(linear.Likelihood, conditions);
        var meant = LevelsMeant.By(options.Whose, layout.Groupings, conditions);
        return new GroupedLaw(
            linear.Likelihood,
            conditions,
            [.. meant.Known.SelectMany(k => Parts([k.Grouping]).Select(part => (part, k.Level)))],
            Parts(meant.Fresh),
            isAverage: options.Whose == Whose.Population
        );

        ImmutableArray<int> Parts(ImmutableArray<int> groupings) => layout.PartsOf([.. groupings.Select(g => layout.Groupings[g])]);
    }
}
