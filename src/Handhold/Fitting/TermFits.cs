using System.Collections.Immutable;

namespace Handhold.Fitting;

/// <summary>The posterior of curves with terms, by importance sampling; a ceiling that is estimated is shared over them.</summary>
internal static class TermFits
{
    private const int Size = 32768;
    private const int Few = 2;
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
            fits.Add(TermSample.Of(model, row, rows.Length > Few ? Size / 2 : Size, cancellation));
            progress?.Report(++done / (double)(rows.Length + 1));
        }

        var shared = rows.Length > 1 && model.Ceiling.Value is null ? SharedCeiling.Over(fits) : null;
        var curves = fits.Select(
                (fit, j) =>
                    TermAssembly.Make(
                        model,
                        rows[j],
                        shared is null ? fit : shared.Share(fit, j),
                        shape => OtherPriors(model, rows[j], shape)
                    )
            )
            .ToArray();
        progress?.Report(1);
        return new(model, [.. curves]) { LogEvidence = shared?.LogEvidence ?? fits.Sum(f => f.LogEvidence) };
    }

    /// <summary>One curve alone, ceiling and floor held at its medians, when the priors of steepness and luck are as they are, twice and half as wide.</summary>
    private static (KeeperCurve Same, KeeperCurve Widened, KeeperCurve Narrowed) OtherPriors(
        KeeperModel model,
        CurveRows rows,
        CurveShape medians
    )
    {
        var held = model with { Ceiling = Ceiling.Fixed(medians.Ceiling), Floor = Floor.Fixed(medians.Floor) };
        return (Fit(1), Fit(2), Fit(0.5));

        KeeperCurve Fit(double by)
        {
            var scaled = held with { Priors = PosteriorFit.Scaled(held.Priors, by) };
            return TermAssembly.Make(
                scaled,
                rows,
                TermSample.Of(scaled, rows, PriorCheckSize, default),
                _ => throw new InvalidOperationException("The check of priors is not checked.")
            );
        }
    }
}
