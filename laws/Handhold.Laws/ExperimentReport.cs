using System.Collections.Immutable;
using System.Globalization;
using System.Text;

namespace Handhold.Laws;

/// <summary>The table of promises and what became of them, and the bars that they are held to.</summary>
internal static class ExperimentReport
{
    private const double Allowance = 0.005;
    private static readonly ImmutableArray<(string Name, Func<double, bool> Has)> TrueRates =
    [
        ("0.5 and more", rate => rate >= 0.5),
        ("0.2 to 0.5", rate => rate is >= PlansKept.Slow and < 0.5),
        ("below 0.2", rate => rate < PlansKept.Slow),
    ];

    /// <summary>What an experiment breaks of what is asked of it.</summary>
    internal static IEnumerable<string> Broken(Experiment experiment, IReadOnlyList<IReadOnlyList<Outcome>> worlds) =>
        (
            experiment.Estimator != Estimator.Posterior ? []
            : experiment.Family == WorldFamily.Priors ? AtHome(worlds)
            : Outside(worlds)
        ).Select(margin =>
            string.Create(
                CultureInfo.InvariantCulture,
                $"{experiment.Title}: {margin.Group} stated {margin.Stated:P1}, kept {margin.Kept:P1}"
            )
        );

    private static IEnumerable<Margin> AtHome(IReadOnlyList<IReadOnlyList<Outcome>> worlds) =>
        from kind in new[] { Experiment.Fixed, Experiment.Chosen }
        from a in Planning.Assurances
        let margin = Margin.Of($"{kind}, {a:P0}", worlds, p => p.Rule == kind && p.Assurance == a)
        where !margin.Holds(Allowance) || margin.Kept < a - Math.Max(Allowance, 4 * margin.Error)
        select margin;

    private static IEnumerable<Margin> Outside(IReadOnlyList<IReadOnlyList<Outcome>> worlds) =>
        from a in Planning.Assurances
        from bar in new[] { (Rates: TrueRates[0], Points: 0.04), (Rates: TrueRates[1], Points: 0.1) }
        where bar.Points < 0.1 || a >= 0.95
        let margin = ByRate(worlds, bar.Rates, a)
        where margin.Plans > 0 && margin.Kept < a - bar.Points
        select margin;

    /// <summary>What the library asks beyond a tenth more frames than an oracle.</summary>
    internal static IEnumerable<string> Broken(Economy economy, IEnumerable<Cost> costs) =>
        costs
            .Where(cost => cost.Ratio > 1.1)
            .Select(cost =>
                string.Create(
                    CultureInfo.InvariantCulture,
                    $"Cost, {economy.Title}: {cost.Ratio:0.000} times an oracle's frames for {cost.Kept:P0}"
                )
            );

    private static Margin ByRate(
        IReadOnlyList<IReadOnlyList<Outcome>> worlds,
        (string Name, Func<double, bool> Has) rates,
        double assurance
    ) =>
        Margin.OfOutcomes(
            FormattableString.Invariant($"true rate {rates.Name}, {assurance:P0}"),
            worlds,
            o => o.Plan.Assurance == assurance && o.TrueRate is { } rate && rates.Has(rate)
        );

    /// <summary>The tables of one experiment.</summary>
    internal static string Section(Experiment experiment, IReadOnlyList<IReadOnlyList<Outcome>> worlds)
    {
        StringBuilder page = new();
        page.Append(CultureInfo.InvariantCulture, $"## {experiment.Title}\n\n");
        page.Append(CultureInfo.InvariantCulture, $"{worlds.Count} worlds.\n\n");
        page.Append(
            "| speed | keepers | promise | stated | kept | kept - stated, points | Monte Carlo error | declined | frames, median | geometric mean | plug-in kept |\n"
        );
        page.Append("|---|---:|---:|---:|---:|---:|---:|---:|---:|---:|---:|\n");
        foreach (var kind in new[] { Experiment.Fixed, Experiment.Chosen })
        {
            foreach (var k in Planning.Keepers)
            {
                foreach (var a in Planning.Assurances)
                {
                    var m = Margin.Of("", worlds, p => p.Rule == kind && p.Keepers == k && p.Assurance == a);
                    page.Append(
                        CultureInfo.InvariantCulture,
                        $"| {kind} | {k} | {a:P0} | {m.Stated:P2} | {m.Kept:P2} | {100 * (m.Kept - m.Stated):+0.00;-0.00;0.00} | {100 * m.Error:0.00} | {m.Declined:P1} | {m.Median:0.#} | {m.GeometricMean:0.0} | {m.PlugInKept:P1} |\n"
                    );
                }
            }
        }
        page.Append(
            "\n| true rate | promise | plans | kept | Monte Carlo error | plans kept less often than promised | of these said to rest on the prior |\n"
        );
        page.Append("|---|---:|---:|---:|---:|---:|---:|\n");
        foreach (var rates in TrueRates)
        {
            foreach (var a in Planning.Assurances)
            {
                var m = ByRate(worlds, rates, a);
                if (m.Plans == 0)
                {
                    continue;
                }
                var plans = worlds
                    .SelectMany(w => w)
                    .Where(o => o.Plan.Frames is not null && o.Plan.Assurance == a && rates.Has(o.TrueRate!.Value))
                    .ToArray();
                var seldom = plans.Count(o => o.Kept < a);
                var rested = rates == TrueRates[^1] ? $"{(double)plans.Count(o => o.RestedOnPrior) / seldom:P0}" : "";
                page.Append(
                    CultureInfo.InvariantCulture,
                    $"| {rates.Name} | {a:P0} | {m.Plans} | {m.Kept:P2} | {100 * m.Error:0.00} | {(double)seldom / plans.Length:P0} | {rested} |\n"
                );
            }
        }
        return page.Append('\n').ToString();
    }

    /// <summary>The table of what honesty costs.</summary>
    internal static string Section(Economy economy, int worlds, IEnumerable<Cost> costs)
    {
        StringBuilder page = new();
        page.Append(CultureInfo.InvariantCulture, $"## Cost: {economy.Title}\n\n{worlds} worlds.\n\n");
        page.Append("| kept share | frames, geometric mean | an oracle's | ratio | Monte Carlo error |\n|---:|---:|---:|---:|---:|\n");
        foreach (var cost in costs)
        {
            page.Append(
                CultureInfo.InvariantCulture,
                $"| {cost.Kept:P0} | {Number(cost.Library)} | {Number(cost.Oracle)} | {Number(cost.Ratio)} | {Number(cost.Error)} |\n"
            );
        }
        return page.Append('\n').ToString();

        static string Number(double value) => double.IsNaN(value) ? "none" : value.ToString("0.000", CultureInfo.InvariantCulture);
    }

    /// <summary>What the page says above its tables.</summary>
    internal static string Head(int worlds) =>
        string.Create(
            CultureInfo.InvariantCulture,
            $"""
            # Promises, and what became of them

            Invented photographers were tested (1/320 to 1/5 s, seven speeds one stop apart, six frames a speed on one day), the library fitted each test and planned frames in
            one burst on another day, and from the photographer's own numbers it was computed with what chance each plan brings its keepers. *Stated* is the assurance that
            the plan itself gives, a little above the promise since frames are whole. Speeds are fixed beforehand (1/80, 1/40 and 1/20 s in turn) or chosen from the data
            (the slowest for a rate of 0.2, 0.5 or 0.8, or the half-keeper speed, in turn). *Declined*: no speed was found, or 1000 frames would not do. *Plug-in*: frames by
            the posterior mode as if known and frames independent. Where the estimator is not the posterior, luck is not known to it.

            Held to: worlds from the priors keep what is stated, and at least the promise, within half a point or four Monte Carlo errors where that is more; other worlds
            at least the promise less 4 points where the true rate at the planned speed is 0.5 or more, and for 95 and 99 % less 10 points where it is 0.2 or more.
            Slower speeds are printed: there a test says little, and the last column says how often the plan admitted it.

            *Cost*: an oracle knows the family of the worlds and has the same data; both are tuned until they keep the same share (the assurance asked is moved until
            they do) at one speed for both; none where no assurance from 50 to 99.8 % keeps just so much; worlds in which
            the library declines a half-keeper speed are left out. The library may ask 1.10 times the oracle's frames, geometric mean.

            Made by `dotnet run -c Release --project laws/Handhold.Laws -- docs/laws {worlds} experiment`; a tenth of the worlds are drawn for each part.


            """
        );
}
