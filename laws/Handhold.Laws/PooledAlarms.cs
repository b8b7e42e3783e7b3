using System.Collections.Immutable;
using Handhold.Kernels;
using Handhold.Randomness;
using Handhold.Solvers;

namespace Handhold.Laws;

/// <summary>How often a fit in which levels vary warns though its frames obey the model.</summary>
internal static class PooledAlarms
{
    internal const long Seed = 20250301;
    internal const double Allowed = 0.001;

    private const int Speeds = 7;
    private const double Middle = -5;

    /// <summary>What varies, by photographer and by setup; setups lie within photographers, or are the same in all hands.</summary>
    internal static readonly ImmutableArray<(string Name, ImmutableArray<Varying> Varies)> Structures =
    [
        ("intercepts of photographers", [new("photographer")]),
        ("intercepts of photographers and of setups within them", [new("photographer"), Within]),
        (
            "intercepts and slopes of photographers, correlated, intercepts of setups within them",
            [new("photographer", VaryingPart.Both), Within]
        ),
        ("intercepts of photographers crossed with those of lenses", [new("photographer"), new("lens")]),
    ];

    private static Varying Within => new("setup") { Within = ["photographer"] };

    /// <summary>How many fits of a structure raised each code; a solver that stopped short is one as well.</summary>
    internal static ImmutableSortedDictionary<string, int> Count(int structure, int fits, int threads)
    {
        var told = new string[fits][];
        Parallel.For(0, fits, new() { MaxDegreeOfParallelism = threads }, i => told[i] = [.. Told(structure, i)]);
        return told.SelectMany(codes => codes)
            .CountBy(code => code, StringComparer.Ordinal)
            .ToImmutableSortedDictionary(StringComparer.Ordinal);
    }

    /// <summary>What one fit says of itself, after all of its intervals were asked for; <see cref="StatusCode.NoGroupSpread"/> is a result, and <see cref="StatusCode.LabelsRepeat"/> how crossed labels were taken.</summary>
    internal static IEnumerable<string> Told(int structure, int world)
    {
        var model = KeeperModel.Default with { Estimator = Estimator.Likelihood, Each = [], Varies = Structures[structure].Varies };
        try
        {
            var curve = model.Fit(Shoot(structure, Randomness.Seed.From(Seed).Stream(structure + (long)Structures.Length * world))).Only;
            _ = curve.Linear!.Coefficients.Select(c => c.Interval).ToArray();
            return curve
                .Statuses.Select(s => s.Code)
                .Where(c => c is not (StatusCode.NoGroupSpread or StatusCode.LabelsRepeat))
                .Select(c => c.ToString())
                .Distinct();
        }
        catch (SolverException)
        {
            return ["a solver that stopped short"];
        }
    }

    /// <summary>
    /// Six to twenty photographers with one to three setups, the first with several, or with four lenses in turn, seven speeds a stop apart about 1/30 s, six or twelve frames a cell, a fifth of the
    /// cells not shot; 0.2 to 1.2 logits between photographers, 0.1 to 0.8 between setups, and, where it varies, 0.1 to 0.4 between slopes.
    /// </summary>
    internal static FrameTable Shoot(int structure, RandomStream chance)
    {
        var (photographers, frames) = (6 + (int)(15 * chance.Uniform()), chance.Happens(0.5) ? 6 : 12);
        var (height, slope) = (2 * chance.Uniform() - 1, -1.2 - 0.8 * chance.Uniform());
        var (ofPhotographers, ofSetups, ofSlopes) = (
            0.2 + chance.Uniform(),
            0.1 + 0.7 * chance.Uniform(),
            structure == 2 ? 0.1 + 0.3 * chance.Uniform() : 0
        );
        double[] lenses = [.. Enumerable.Range(0, 4).Select(_ => ofSetups * chance.Normal())];
        List<FrameCell> cells = [];
        for (var p = 0; p < photographers; p++)
        {
            var (own, ownSlope) = (height + ofPhotographers * chance.Normal(), slope + ofSlopes * chance.Normal());
            var setups = structure == 0 ? 1 : Math.Max(p == 0 ? 2 : 1, 1 + (int)(3 * chance.Uniform()));
            for (var s = 0; s < setups; s++)
            {
                var lens = (p + s) % lenses.Length;
                var level = structure switch
                {
                    0 => own,
                    3 => own + lenses[lens],
                    _ => own + ofSetups * chance.Normal(),
                };
                Conditions conditions =
                    structure == 3
                        ? new Conditions { Photographer = Label("p", p) }.With("lens", Label("l", lens))
                        : new() { Photographer = Label("p", p), Setup = Label("s", s) };
                for (var x = -Speeds / 2; x <= Speeds / 2; x++)
                {
                    var (rate, shot) = (Elementary.Logistic(level + ownSlope * x).Mu, !chance.Happens(0.2));
                    var keepers = Enumerable.Range(0, frames).Count(_ => chance.Happens(rate));
                    if (shot)
                        cells.Add(new(ShutterSpeed.FromLog2Seconds(Middle + x), frames, keepers) { Conditions = conditions });
                }
            }
        }
        return [.. cells];
    }

    private static string Label(string kind, int number) => FormattableString.Invariant($"{kind}{number:D2}");
}
