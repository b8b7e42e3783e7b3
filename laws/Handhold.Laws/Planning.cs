using System.Collections.Immutable;
using Handhold.Prediction;

namespace Handhold.Laws;

/// <summary>What the library plans after a test.</summary>
internal static class Planning
{
    internal static readonly ImmutableArray<double> Assurances = [0.80, 0.90, 0.95, 0.99];
    internal static readonly ImmutableArray<int> Keepers = [1, 2, 3];

    // Whether an answer rests on the prior changes what is said of it, not the answer.
    internal static readonly AnswerOptions Usual = new() { CheckPriors = false };

    internal static readonly ImmutableArray<SpeedRule> Rules =
    [
        new("rate 0.2 at 90 %", curve => curve.Slowest(rate: 0.2, assurance: 0.9, Usual).Shutter),
        new("rate 0.5 at 80 %", curve => curve.Slowest(rate: 0.5, assurance: 0.8, Usual).Shutter),
        new("rate 0.8 at 90 %", curve => curve.Slowest(rate: 0.8, assurance: 0.9, Usual).Shutter),
        new(
            "nearest to half-keeper",
            curve => curve.HalfKeeperExposure(Usual).Exposure is { } half ? MarkedSpeeds.Nearest(half, Marks.Third) : null
        ),
    ];

    /// <summary>Plans for another day: worlds take turns in the rule of the speed, and every sixteenth round plans bursts of 3.</summary>
    /// <remarks>
    /// Asked of the law that answers <c>FramesNeeded</c>, once for all twelve combinations of keepers and assurance; a test checks that the
    /// public question gives the same plans.
    /// </remarks>
    internal static IReadOnlyList<Plan> AfterTest(int world, FrameTable table)
    {
        var curve = TestDesign.Model.Fit(table).Only;
        var worlds = TestDesign.HalfPoint;
        if (
            curve.HalfPointPrior is not { } prior
            || Math.Abs(prior.Mean - worlds.Mean) + Math.Abs(prior.StandardDeviation - worlds.StandardDeviation) > 1e-12
        )
        {
            throw new InvalidOperationException($"The worlds' half point is {worlds}, the fit's {curve.HalfPointPrior}.");
        }
        return Plans(curve, table, Rules[world % Rules.Length], Options(world));
    }

    /// <summary>Plans of all combinations of keepers and assurance at the speed that a rule chooses.</summary>
    internal static IReadOnlyList<Plan> Plans(KeeperCurve curve, FrameTable table, SpeedRule rule, AnswerOptions options)
    {
        var wanted = Keepers.SelectMany(k => Assurances.Select(a => new Plan(rule.Name, null, k, a, options.BurstsOf, null, 0, null)));
        Question question = new(curve, options);
        if (rule.Speed(curve) is not { } at || question.Declined(at.Log2Seconds))
        {
            return [.. wanted];
        }
        var law = ShootLaw.For(question, at.Log2Seconds);
        var plugIn = PlugIn.Mode(table, KeeperModel.Default.Priors, TestDesign.HalfPoint).RateAt(at);
        return
        [
            .. wanted.Select(plan =>
            {
                var frames = FramesQuestion.Smallest(law, plan.Keepers, plan.Assurance, options.Budget, default);
                return plan with
                {
                    At = at,
                    Frames = frames,
                    Stated = law.AtLeast(plan.Keepers, frames ?? options.Budget, default),
                    PlugIn = PlugIn.FramesNeeded(plugIn, plan.Keepers, plan.Assurance),
                    RestsOnPrior = () =>
                        curve
                            .FramesNeeded(at, plan.Keepers, plan.Assurance, options with { CheckPriors = true })
                            .Statuses.Any(s => s.Code == StatusCode.RestsOnPrior),
                };
            }),
        ];
    }

    /// <summary>How a world's plans are asked for.</summary>
    internal static AnswerOptions Options(int world) => Usual with { BurstsOf = world / Rules.Length % 16 == 15 ? 3 : null };
}
