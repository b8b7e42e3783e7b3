using System.Collections.Immutable;

namespace Handhold.Fitting;

/// <summary>The posterior of curves in which levels vary, each by itself.</summary>
internal static class VaryingFits
{
    private const int Size = 4096;
    private const int PriorCheckSize = 1024;

    internal static FittedCurves Run(
        KeeperModel model,
        ImmutableArray<CurveRows> rows,
        IProgress<double>? progress,
        CancellationToken cancellation
    )
    {
        var (curves, evidence) = (new List<KeeperCurve>(), 0.0);
        foreach (var (number, row) in rows.Index())
        {
            var sample = VaryingSample.Of(
                model,
                row,
                Size,
                rough: false,
                share => progress?.Report((number + share) / rows.Length),
                cancellation
            );
            evidence += sample.LogEvidence;
            curves.Add(Curve(model, row, sample));
        }

        return new(model, [.. curves]) { LogEvidence = evidence };
    }

    private static KeeperCurve Curve(KeeperModel model, CurveRows rows, VaryingSample sample) =>
        VaryingAssembly.Make(
            model,
            rows,
            sample,
            shape =>
                OtherPriors.Of(
                    model,
                    shape,
                    held => Curve(held, rows, VaryingSample.Of(held, rows, PriorCheckSize, rough: true, null, default))
                )
        );
}
