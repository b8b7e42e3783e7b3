using System.Collections.Immutable;

namespace Handhold.Fitting;

/// <summary>The posterior of curves with terms, by importance sampling; a ceiling that is estimated is shared over them.</summary>
internal static class TermFits
{
    private const int Size = 16384;
    private const int PriorCheckSize = 4096;

    internal static FittedCurves Run(
        KeeperModel model,
        ImmutableArray<CurveRows> rows,
        IProgress<double>? progress,
        CancellationToken cancellation
    )
    {
        var (fits, done) = (new List<TermSample>(), 0);
        foreach (var row in rows)
        {
            fits.Add(TermSample.Of(model, row, Size, cancellation));
            progress?.Report(++done / (double)(rows.Length + 1));
        }

        var shared = rows.Length > 1 && model.Ceiling.Value is null ? SharedCeiling.Over(fits) : null;
        var curves = fits.Select((fit, j) => Curve(model, rows[j], shared is null ? fit : shared.Share(fit, j))).ToArray();
        progress?.Report(1);
        return new(model, [.. curves]) { LogEvidence = shared?.LogEvidence ?? fits.Sum(f => f.LogEvidence) };
    }

    private static KeeperCurve Curve(KeeperModel model, CurveRows rows, TermSample sample) =>
        TermAssembly.Make(
            model,
            rows,
            sample,
            shape => OtherPriors.Of(model, shape, held => Curve(held, rows, TermSample.Of(held, rows, PriorCheckSize, default)))
        );
}
