namespace Handhold.Tests.Pooling;

/// <summary>Posteriors of levels that vary against long chains of a general-purpose sampler: golden/levels-in-stops.</summary>
public class LongChainFacts
{
    private const string Case = "levels-in-stops";

    [Theory]
    [InlineData("few")]
    [InlineData("both")]
    [InlineData("nested")]
    [InlineData("lens")]
    public void Means_sds_and_quantiles_are_those_of_long_chains(string club)
    {
        var curve = Model(club).Fit(Cells(club)).Only;
        Assert.DoesNotContain(
            curve.Statuses.Concat(curve.Levels.SelectMany(g => g.Levels).SelectMany(l => l.Statuses)),
            s => s.Code == StatusCode.Approximate
        );
        var known = Summaries(curve).ToDictionary(s => s.Name, s => s.Summary);
        foreach (var row in GoldenFolder.Rows(Case, $"{club}-expected.csv"))
        {
            Assert.True(row.Number("effective") > 10_000, row["name"]);
            var (found, sd) = (known[row["name"].Trim()], row.Number("sd"));
            Near(row.Number("mean"), found.Mean, 0.1 * sd, $"mean of {row["name"]}");
            Near(sd, found.StandardDeviation, 0.05 * sd, $"sd of {row["name"]}");
            Near(row.Number("q05"), found.Interval.Lower, 0.15 * sd, $"5 % of {row["name"]}");
            Near(row.Number("q50"), found.Median, 0.15 * sd, $"median of {row["name"]}");
            Near(row.Number("q95"), found.Interval.Upper, 0.15 * sd, $"95 % of {row["name"]}");
        }
    }

    private static void Near(double expected, double found, double tolerance, string what) =>
        Assert.True(Math.Abs(expected - found) <= tolerance, FormattableString.Invariant($"{what}: {found}, by long chains {expected}"));

    private static KeeperModel Model(string club) =>
        KeeperModel.Default with
        {
            Level = 0.9,
            Luck = LuckKind.None,
            Ceiling = club == "both" ? Ceiling.Estimated : Ceiling.One,
            Varies = club switch
            {
                "few" => [new("photographer")],
                "both" => [new("photographer", VaryingPart.Both)],
                "lens" => [new("photographer"), new("photographer") { Term = "stabiliser" }],
                _ => [new("photographer", VaryingPart.Both), new("setup") { Within = ["photographer"] }],
            },
        };

    private static FrameTable Cells(string club) =>
        [
            .. GoldenFolder
                .Rows(Case, $"{club}.csv")
                .Select(row => new FrameCell(
                    ShutterSpeed.FromSeconds(row.Number("exposure_s")),
                    (int)row.Number("frames"),
                    (int)row.Number("keepers")
                )
                {
                    Conditions = new()
                    {
                        Photographer = row["photographer"],
                        Setup = club == "nested" ? row["setup"] : null,
                        StabiliserMode = club == "lens" ? row["mode"] : null,
                    },
                }),
        ];

    /// <summary>Under the names that the chains' script gives them.</summary>
    private static IEnumerable<(string Name, ParameterSummary Summary)> Summaries(KeeperCurve curve)
    {
        foreach (var parameter in curve.Parameters)
            yield return (parameter.Name == "stabiliser" ? "buys" : parameter.Name, parameter);
        foreach (var group in curve.Levels)
        {
            var isUpper = group.Varying.Column == "photographer";
            foreach (var spread in group.Spreads)
                yield return (
                    spread.Name == "log2b" ? "sb"
                    : spread.Name == "stabiliser" ? "sl"
                    : isUpper ? "st"
                    : "ss",
                    spread
                );
            if (group.Correlation is { } correlation)
                yield return ("rho", correlation);
            for (var l = 0; l < group.Levels.Length; l++)
                foreach (var effect in group.Levels[l].Effects)
                    yield return (
                        (
                            effect.Name == "log2b" ? "steep"
                            : effect.Name == "stabiliser" ? "more"
                            : isUpper ? "shift"
                            : "own"
                        ) + FormattableString.Invariant($"[{l + 1}]"),
                        effect
                    );
        }
    }
}
