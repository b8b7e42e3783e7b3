using System.Collections.Immutable;
using System.Globalization;
using System.Text;

namespace Handhold.Laws;

/// <summary>The table of plans kept, as it is committed.</summary>
internal static class PlansKeptReport
{
    private const int FewestWorlds = 50; // below that a Monte Carlo error is itself too uncertain to judge by

    /// <summary>The margins that must hold for one design of the test.</summary>
    internal static ImmutableArray<Margin> Margins(IReadOnlyList<IReadOnlyList<Outcome>> worlds)
    {
        (string Name, Func<Plan, bool> Has)[] sizes =
        [
            ("up to 10 frames", p => p.Frames <= 10),
            ("11 to 30 frames", p => p.Frames is > 10 and <= 30),
            ("more than 30 frames", p => p.Frames > 30),
        ];
        List<Margin> margins = [];
        foreach (var a in Planning.Assurances)
        {
            var assured = FormattableString.Invariant($"{a:P0}");
            margins.AddRange(
                Planning.Keepers.Select(k => Margin.Of($"{assured}, {k} wanted", worlds, p => p.Assurance == a && p.Keepers == k))
            );
            margins.AddRange(sizes.Select(s => Margin.Of($"{assured}, {s.Name}", worlds, p => p.Assurance == a && s.Has(p))));
        }
        margins.AddRange(Planning.Rules.Select(r => Margin.Of($"speed: {r.Name}", worlds, p => p.Rule == r.Name)));
        margins.Add(Margin.Of("all frames in one burst", worlds, p => p.BurstsOf is null));
        margins.Add(Margin.Of("in bursts of 3", worlds, p => p.BurstsOf == 3));
        return [.. margins.Where(m => m.Worlds >= FewestWorlds)];
    }

    /// <summary>The page, from all designs.</summary>
    internal static string Page(double allowance, IEnumerable<(TestDesign Design, int Worlds, ImmutableArray<Margin> Margins)> designs)
    {
        StringBuilder page = new();
        page.Append(
            CultureInfo.InvariantCulture,
            $"""
            # Are plans kept?

            Worlds were drawn from the default priors (`{Priors.Default.Version}`), for a setup of 50 mm equivalent, stabiliser off, far and
            still, judged on a print. Each was tested once, at 1/320 to 1/5 s, seven speeds one stop apart, six frames a speed on one day. The
            library fitted each test, chose speeds from the data, and planned frames for another day. For each plan the chance that it is kept
            was then computed from the world's own numbers, exactly: no frame of another day was drawn. Worlds take turns in how the speed is
            chosen; every combination of assurance and keepers is planned in every world; one world in sixteen plans bursts of 3. The law: the mean of kept - stated
            is at most {100 * allowance:0.0} points, or four Monte Carlo errors where that is more, in every row.

            *Declined*: the speed rule found no speed, or no number of frames up to 1000 would do. Rows by the number of frames have no declined plans;
            groups that fewer than {FewestWorlds} worlds have are left out.
            *Plug-in*: the frames needed if the posterior mode in (tau, log b, log odds of the ceiling's loss) were the truth and frames were independent,
            at the same speeds; the column says how often they would have sufficed.

            Made by `dotnet run -c Release --project laws/Handhold.Laws -- docs/laws`, seed {PlansKept.Seed}, generator `{Randomness.Seed.Generator}`.


            """
        );
        foreach (var (design, worlds, margins) in designs)
        {
            page.Append(CultureInfo.InvariantCulture, $"## Tested in {design.Name}: {worlds} worlds\n\n");
            page.Append("| plans | number | declined | stated | kept | kept - stated, points | Monte Carlo error | plug-in kept |\n");
            page.Append("|---|---:|---:|---:|---:|---:|---:|---:|\n");
            foreach (var m in margins)
            {
                page.Append(
                    CultureInfo.InvariantCulture,
                    $"| {m.Group} | {m.Plans} | {m.Declined:P1} | {m.Stated:P2} | {m.Kept:P2} | {100 * (m.Kept - m.Stated):+0.00;-0.00;0.00} | {100 * m.Error:0.00} | {m.PlugInKept:P1} |\n"
                );
            }
            page.Append('\n');
        }
        return page.ToString().TrimEnd('\n') + "\n";
    }
}
