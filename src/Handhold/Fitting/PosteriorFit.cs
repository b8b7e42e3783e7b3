using System.Collections.Immutable;
using Handhold.Models;

namespace Handhold.Fitting;

/// <summary>The posterior of curves that share ceiling and floor.</summary>
internal static class PosteriorFit
{
    private const int UsualAsymptoteNodes = 12;

    internal static FittedCurves Run(
        KeeperModel model,
        ImmutableArray<CurveRows> rows,
        IProgress<double>? progress,
        CancellationToken cancellation
    )
    {
        if (!model.Varies.IsEmpty)
            return VaryingFits.Run(model, rows, progress, cancellation);
        if (rows.Any(r => WhatMoved.IsCalledFor(model, [.. r.Data.Cells.Select(c => c.Conditions).Distinct()])))
            return TermFits.Run(model, rows, progress, cancellation);
        var data = rows.Select(r => CurveObservations.From(r.Data.Cells, model.Luck)).ToArray();
        var session = rows.Select(
                (r, j) =>
                    LuckNodes.ForSessions(
                        model.Priors.SessionLuck,
                        GridSteps.LikelihoodSd(data[j], model.Priors.Steepness.Median, r.HalfPoint)
                    )
            )
            .ToArray();
        var burst = Enumerable.Repeat(LuckNodes.Usual, rows.Length).ToArray();
        while (true)
        {
            var sessionLuck = session.Select(n => n.Grid(model.Priors.SessionLuck, model.Luck)).ToArray();
            var burstLuck = burst.Select(n => n.Grid(model.Priors.BurstLuck, model.Luck)).ToArray();
            var walks = rows.Select(
                    (r, j) =>
                        new SteepnessWalk(
                            new(data[j], r.HalfPoint, model.Judging, sessionLuck[j], burstLuck[j]),
                            model.Priors.Steepness,
                            rows.Length == 1,
                            cancellation
                        )
                )
                .ToArray();
            var done = 0;
            AsymptoteWalk asymptotes = new(
                model,
                (ceiling, floor, logPrior) =>
                {
                    var sum = 0.0;
                    foreach (var walk in walks)
                    {
                        sum += walk.LogEvidence(ceiling, floor, logPrior);
                        progress?.Report(Math.Min(0.99, ++done / (double)(UsualAsymptoteNodes * walks.Length)));
                    }

                    return sum;
                }
            );
            var builders = walks.Select((w, j) => new CurvePosteriorBuilder(w, asymptotes, sessionLuck[j], burstLuck[j])).ToArray();
            if (Refined(session, builders, ofSession: true) | Refined(burst, builders, ofSession: false))
                continue;
            progress?.Report(1);
            var curves = rows.Select(
                (r, j) =>
                    CurveAssembly.Make(
                        model,
                        r,
                        asymptotes,
                        builders[j],
                        shape => OtherPriors.Of(model, shape, held => Run(held, [r], null, default)[0]),
                        alone: rows.Length == 1
                    )
            );
            return new(model, [.. curves]) { LogEvidence = asymptotes.LogEvidence };
        }
    }

    /// <summary>Whether the data call for finer or farther nodes of some luck than its prior needs; then asks for them.</summary>
    private static bool Refined(LuckNodes[] nodes, CurvePosteriorBuilder[] builders, bool ofSession)
    {
        var refined = false;
        for (var j = 0; j < nodes.Length; j++)
        {
            var next = nodes[j].Refined(builders[j].Luck(ofSession));
            refined |= next != nodes[j];
            nodes[j] = next;
        }

        return refined;
    }
}
