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
        var (curves, evidence, done) = (new List<KeeperCurve>(), 0.0, 0);
        foreach (var row in rows)
        {
            var sample = VaryingSample.Of(model, row, Size, rough: false, cancellation);
            evidence += sample.LogEvidence;
            curves.Add(Curve(model, row, sample));
            progress?.Report(++done / (double)rows.Length);
        }

        return new(model, [.. curves]) { LogEvidence = evidence };
    }

    private static KeeperCurve Curve(KeeperModel model, CurveRows rows, VaryingSample sample) =>
        VaryingAssembly.Make(
            model,
            rows,
            sample,
            shape =>
                OtherPriors.Of(model, shape, held => Curve(held, rows, VaryingSample.Of(held, rows, PriorCheckSize, rough: true, default)))
        );
}
