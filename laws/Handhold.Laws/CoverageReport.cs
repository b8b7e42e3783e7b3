using System.Collections.Immutable;
using System.Globalization;
using System.Text;

namespace Handhold.Laws;

/// <summary>The table of coverage, as it is committed.</summary>
internal static class CoverageReport
{
    /// <summary>The page of the estimators without prior.</summary>
    /// <param name="parts">For each estimator and number of frames a speed: its points, and the tests simulated, none where all tables were enumerated.</param>
    /// <param name="swept">Bias-reduced, 3 frames a speed, the half point moved in small steps.</param>
    internal static string Page(
        IEnumerable<(Estimator Estimator, int Frames, int? Tests, ImmutableArray<Coverage.Point> Points)> parts,
        ImmutableArray<Coverage.Point> swept
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

            The law: bias-reduced at least {100
                * Least:0} % in the enumerated rows with the half-keeper exposure at the middle speed or half a stop from it. Elsewhere steep curves
            fall below it, as the last table shows.

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
        page.Append(
            """

            Three frames a speed give few tables, each with one interval: as the half point moves, a table of two or three per cent comes in or falls out at a hair, and
            the coverage jumps by as much. Bias-reduced, all tables enumerated, the half point from 1.5 stops faster than the middle speed to 1.5 slower in steps of 0.05:

            | logits a stop | half-keeper exposure: least | mean | exposure for 90 %: least | mean |
            |---:|---:|---:|---:|---:|

            """
        );
        foreach (var slope in swept.GroupBy(p => p.Slope))
            page.Append(
                CultureInfo.InvariantCulture,
                $"| {slope.Key:0.0} | {string.Join(" | ", Coverage.Rates.Select((_, r) => $"{Share(slope.Min(p => p.Covered[r]), null)} | {Share(slope.Average(p => p.Covered[r]), null)}"))} |\n"
            );
        return page.Append('\n').Append(MadeBy("coverage")).ToString();
    }

    /// <summary>The page of the posterior.</summary>
    /// <param name="rates">For each rate, the share of worlds whose exposure the interval contains, and the share claimed.</param>
    /// <param name="worlds">Worlds drawn for them.</param>
    internal static string PosteriorPage(ImmutableArray<(double Covered, double Claimed)> rates, int worlds) =>
        FormattableString.Invariant(
            $"""
            # Do the posterior's intervals of an exposure contain it?

            Worlds drawn from the default priors (`{Priors.Default.Version}`), each tested with seven speeds one stop apart, six frames a speed in two bursts of 3, on
            one day. The exposure is that of another day, its luck drawn anew. How often the 95 % interval contains it, in per cent, with the Monte Carlo error. Where
            the ceiling is below 90 % no speed has that rate: an interval contains that where it has no fastest end, or says not reachable. An interval has no fastest end
            where the chance of that is above 2.5 %; it then leaves out the slow tail only and claims 97.5 %.

            The law: what is claimed ± 0.5, or three Monte Carlo errors where that is more.

            | worlds | exposure for | contained | claimed |
            |---:|---|---:|---:|
            | {worlds} | half keepers | {Share(rates[0].Covered, worlds)} | {100 * rates[0].Claimed:0.0} |
            | {worlds} | 90 % | {Share(rates[1].Covered, worlds)} | {100 * rates[1].Claimed:0.0} |

            {MadeBy("posterior")}
            """
        );

    /// <summary>What the law asks of the bias-reduced estimator.</summary>
    internal const double Least = 0.93;

    private static string MadeBy(string law) =>
        FormattableString.Invariant(
            $"Made by `dotnet run -c Release --project laws/Handhold.Laws -- docs/laws 20000 {law}`, seed {Coverage.Seed}, generator `{Randomness.Seed.Generator}`.\n"
        );

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
