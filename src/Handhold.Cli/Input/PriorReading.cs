namespace Handhold.Cli;

/// <summary>Reads <c>--prior NAME=family(numbers)</c>.</summary>
internal static class PriorReading
{
    private const string Option = "--prior";

    /// <summary>These priors with the named ones put in their place; a name may come once.</summary>
    public static Priors Read(string[] texts)
    {
        var named = texts.Select(text => (Text: text, Pair: Reading.Pair(Option, text))).ToArray();
        foreach (var twice in named.GroupBy(n => n.Pair.Name).Where(g => g.Count() > 1))
            throw Reading.Refused(Option, twice.Last().Text, $"gives {twice.Key} a second time.", "Give each prior once.");
        return named.Aggregate(Priors.Default, (priors, n) => With(priors, n.Text, n.Pair.Name, n.Pair.Value));
    }

    private static Priors With(Priors priors, string text, string name, string prior)
    {
        return name switch
        {
            "tau0" => priors with { HalfPoint = Normal(text, prior) },
            "b" => priors with { Steepness = LogNormal(text, prior) },
            "ceilingLoss" => priors with { CeilingLoss = Beta(text, prior) },
            "floor" => priors with { Floor = Beta(text, prior) },
            "sessionLuck" => priors with { SessionLuck = HalfNormal(text, prior) },
            "burstLuck" => priors with { BurstLuck = HalfNormal(text, prior) },
            "focal" => priors with { Anchor = priors.Anchor with { FocalLength = Normal(text, prior) } },
            "magnification" => priors with { Anchor = priors.Anchor with { Magnification = Normal(text, prior) } },
            "ratedStop" => priors with { Anchor = priors.Anchor with { RatedStop = Normal(text, prior) } },
            "unratedStabiliser" => priors with { Anchor = priors.Anchor with { UnratedStabiliser = Normal(text, prior) } },
            "handSpeed" => priors with { Anchor = priors.Anchor with { HandSpeed = LogNormal(text, prior) } },
            "slightMotion" => priors with { Anchor = priors.Anchor with { SlightMotion = Normal(text, prior) } },
            "briskMotion" => priors with { Anchor = priors.Anchor with { BriskMotion = Normal(text, prior) } },
            "firstFrame" => priors with { FirstFrame = Normal(text, prior) },
            "photographerTau" => Spread(s => s with { PhotographerTau = HalfNormal(text, prior) }),
            "photographerLogB" => Spread(s => s with { PhotographerLogB = HalfNormal(text, prior) }),
            "setupTau" => Spread(s => s with { SetupTau = HalfNormal(text, prior) }),
            "setupLogB" => Spread(s => s with { SetupLogB = HalfNormal(text, prior) }),
            "otherTau" => Spread(s => s with { OtherTau = HalfNormal(text, prior) }),
            "otherLogB" => Spread(s => s with { OtherLogB = HalfNormal(text, prior) }),
            "term" => Spread(s => s with { Term = HalfNormal(text, prior) }),
            "correlation" => Spread(s => s with { Correlation = new(One("lkj", text, prior)) }),
            _ => throw Reading.Refused(
                Option,
                text,
                $"names no prior: `{name}`.",
                "The names are tau0, b, ceilingLoss, floor, sessionLuck, burstLuck, focal, magnification, ratedStop, unratedStabiliser, handSpeed, slightMotion, briskMotion, firstFrame, and of levels that vary photographerTau, photographerLogB, setupTau, setupLogB, otherTau, otherLogB, term and correlation."
            ),
        };

        Priors Spread(Func<SpreadPriors, SpreadPriors> changed) => priors with { Spreads = changed(priors.Spreads) };
    }

    private static NormalPrior Normal(string text, string prior) =>
        Two("normal", text, prior) is var (mean, sd) && sd > 0 ? new(mean, sd) : throw Positive(text);

    private static LogNormalPrior LogNormal(string text, string prior) =>
        Two("lognormal", text, prior) is var (median, logSd) && median > 0 && logSd > 0 ? new(median, logSd) : throw Positive(text);

    private static BetaPrior Beta(string text, string prior) =>
        Two("beta", text, prior) is var (a, b) && a > 0 && b > 0 ? new(a, b) : throw Positive(text);

    private static HalfNormalPrior HalfNormal(string text, string prior) => new(One("half-normal", text, prior));

    private static double One(string family, string text, string prior) =>
        Numbers(family, 1, text, prior)[0] is var number and > 0 ? number : throw Positive(text);

    private static (double, double) Two(string family, string text, string prior) =>
        Numbers(family, 2, text, prior) is [var first, var second] ? (first, second) : default;

    private static double[] Numbers(string family, int count, string text, string prior)
    {
        var numbers =
            prior.StartsWith(family + "(", StringComparison.Ordinal) && prior.EndsWith(')')
                ? prior[(family.Length + 1)..^1].Split(',', StringSplitOptions.TrimEntries)
                : [];
        return numbers.Length == count
            ? [.. numbers.Select(n => Reading.Number(Option, n))]
            : throw Reading.Refused(
                Option,
                text,
                $"is not a {family} prior with {count} {(count == 1 ? "number" : "numbers")}.",
                Form(family, count)
            );
    }

    private static string Form(string family, int count) => $"Write {family}({string.Join(",", Enumerable.Repeat("number", count))}).";

    private static UsageException Positive(string text) =>
        Reading.Refused(Option, text, "has a size that is not above 0.", "Standard deviations, medians, scales and shapes are positive.");
}
