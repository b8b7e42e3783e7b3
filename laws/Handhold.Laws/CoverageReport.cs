using System.Collections.Immutable;
using System.Globalization;
using System.Text;

namespace Handhold.Laws;

/// <summary>The table of coverage, as it is committed.</summary>
internal static class CoverageReport
{
    /// <summary>The page.</summary>
    /// <param name="parts">For each estimator and number of frames a speed: its points, and the tests simulated, none where all tables were enumerated.</param>
    /// <param name="overThePrior">The posterior's shares under its prior, one a rate.</param>
    /// <param name="worlds">Worlds drawn for them.</param>
    internal static string Page(
        IEnumerable<(Estimator Estimator, int Frames, int? Tests, ImmutableArray<Coverage.Point> Points)> parts,
        ImmutableArray<double> overThePrior,
        int worlds
    )
    {
        StringBuilder page = new();
        page.Append(
            CultureInfo.InvariantCulture,
            $"""
            # Do intervals of an exposure contain it?

            Seven speeds one stop apart, so many frames a speed, each a keeper or not by itself; the rate falls by so many logits a stop and is a half at so many
            stops from the middle speed. How often the 95 % interval for the half-keeper exposure, and for the exposure of 90 %, contains it, in
            per cent. A side without bound counts as containing. With 3 frames a speed all 16384 tables were enumerated and weighed by their probability: these
            figures have no chance in them. With more, tests were simulated; the Monte Carlo error follows ±.

            The law: bias-reduced at least 93 % at every enumerated point; posterior 95 ± 0.5 % under its own prior.

            | estimator | frames a speed | logits a stop | half, stops from the middle | half-keeper exposure | exposure for 90 % |
            |---|---:|---:|---:|---:|---:|

            """
        );
        foreach (var (estimator, frames, tests, points) in parts)
        foreach (var point in points)
            page.Append(
                CultureInfo.InvariantCulture,
                $"| {Name(estimator)} | {frames} | {point.Slope:0.0} | {point.Half:0.0} | {string.Join(" | ", point.Covered.Select(c => Share(c, tests)))} |\n"
            );
        if (worlds > 0)
            page.Append(
                CultureInfo.InvariantCulture,
                $"""

                Posterior, over {worlds} worlds drawn from its prior (`{Priors.Default.Version}`), each tested with six frames a speed in two bursts of 3 on one day;
                the exposure is that of another day, its luck drawn anew: half-keeper exposure {Share(overThePrior[0], worlds)} %, exposure for 90 % {Share(
                    overThePrior[1],
                    worlds
                )} %.
                Where the ceiling is below 90 % no speed has that rate: an interval contains that where it has no fastest end, or says not reachable.

                """
            );
        page.Append(
            CultureInfo.InvariantCulture,
            $"""

            Made by `dotnet run -c Release --project laws/Handhold.Laws -- docs/laws 20000 coverage`, seed {Coverage.Seed}, generator `{Randomness.Seed.Generator}`.

            """
        );
        return page.ToString();
    }

    private static string Share(double covered, int? tests) =>
        tests is { } n
            ? FormattableString.Invariant($"{100 * covered:0.0} ± {100 * Math.Sqrt(covered * (1 - covered) / n):0.0}")
            : FormattableString.Invariant($"{100 * covered:0.00}");

    private static string Name(Estimator estimator) =>
        estimator switch
        {
            Estimator.BiasReduced => "bias-reduced",
            Estimator.Likelihood => "likelihood",
            _ => "posterior",
        };
}
