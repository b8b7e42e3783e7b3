using System.Collections.Immutable;
using System.CommandLine;

namespace Handhold.Cli;

/// <summary>The options of fitting, shared by <c>fit</c> and by every question that is put to a table.</summary>
internal sealed partial class FitOptions
{
    private readonly Option<string> _estimator = new("--estimator")
    {
        HelpName = "posterior|bias-reduced|likelihood",
        Description = "How to estimate [posterior].",
    };
    private readonly Option<string> _link = new("--link")
    {
        HelpName = "logit|probit|cloglog",
        Description = "Shape of the curve; the posterior knows the first [logit].",
    };
    private readonly Option<string> _scale = new("--scale")
    {
        HelpName = "stops|link",
        Description = "What varies: stops for the posterior, the link's scale otherwise.",
    };
    private readonly Option<string> _ceiling = new("--ceiling")
    {
        HelpName = "one|estimated|0.97",
        Description = "Keeper rate that even very fast frames do not exceed [estimated by the posterior, one otherwise].",
    };
    private readonly Option<string> _floor = new("--floor")
    {
        HelpName = "0|estimated|0.02",
        Description = "Keeper rate that even very slow frames keep [0].",
    };
    private readonly Option<string> _luck = new("--luck")
    {
        HelpName = "normal|beta-binomial|none",
        Description =
            "Whether frames of a day and of a burst share luck [normal for the posterior, none otherwise]; the likelihood knows that of a burst, "
            + "also as a constant correlation (beta-binomial).",
    };
    private readonly Option<string> _nodes = new("--nodes")
    {
        HelpName = "N",
        Description =
            "Quadrature nodes for the likelihood's normal luck, or one varying intercept, 1 (Laplace's method) to 200 [as many as the log-likelihood takes to settle].",
    };
    private readonly Option<string> _burst = new("--burst")
    {
        HelpName = "COLUMN|none",
        Description = "Column that names the burst [burst]; none: every frame was held afresh.",
    };
    private readonly Option<bool> _burstPerRow = new("--burst-per-row") { Description = "Each row of the table is one burst." };
    private readonly Option<string> _each = new("--each")
    {
        HelpName = "COLUMN,COLUMN",
        Description = "One curve for each combination of these columns [photographer,setup,criterion].",
    };
    private readonly Option<bool> _together = new("--together") { Description = "One curve of all rows." };
    private readonly Option<string[]> _prior = new("--prior")
    {
        HelpName = "NAME=FAMILY(...)",
        Description =
            "What is believed before the data: tau0=normal(m,s), b=lognormal(median,s), ceilingLoss=beta(a,b), floor=beta(a,b), "
            + "sessionLuck=half-normal(s), burstLuck=half-normal(s); of terms "
            + "focal, magnification, ratedStop, unratedStabiliser, slightMotion, briskMotion, firstFrame=normal(m,s), handSpeed=lognormal(median,s).",
    };
    private readonly Option<string> _sensitivity = new("--sensitivity")
    {
        HelpName = "P",
        Description =
            "Share of keepers that the judge calls keepers; the posterior allows for it [1, or learned from frames with a second_verdict].",
    };
    private readonly Option<string> _specificity = new("--specificity")
    {
        HelpName = "P",
        Description = "Share of rejects that the judge calls rejects [the same].",
    };
    private readonly Option<string> _level = new("--level") { HelpName = "P", Description = "Probability inside intervals [95%]." };
    private readonly Option<string> _seed = new("--seed")
    {
        HelpName = "N",
        Description = "Seed, recorded with the fit; same seed, same numbers [1].",
    };
    private readonly Option<string> _grade = new("--keeper-from-grade")
    {
        HelpName = "N",
        Description = "Frames of grade N and above are keepers; needed with a grade column.",
    };
    private readonly Option<string> _save = new("--save")
    {
        HelpName = "FIT.json",
        Description = "Keep the fit in a file that can be asked again.",
    };
    private readonly Option<bool> _withoutCells = new("--without-cells")
    {
        Description = "Leave the counts out of the JSON; such a file cannot be asked again.",
    };
    private readonly Option<bool> _noTerms = new("--no-terms")
    {
        Description = "No terms: one curve also where focal length, stabiliser, magnification or subject vary within it.",
    };
    private readonly VaryOptions _vary = new();

    private ImmutableArray<Option> All =>
        [
            _each,
            _together,
            _ceiling,
            _floor,
            _luck,
            _nodes,
            _burst,
            _burstPerRow,
            _prior,
            _sensitivity,
            _specificity,
            _level,
            _grade,
            _save,
            _withoutCells,
            _estimator,
            _link,
            _term,
            _product,
            _noTerms,
            _scale,
            _seed,
            .. _vary.All,
        ];

    public void AddTo(Command command)
    {
        foreach (var option in All)
            command.Options.Add(option);
    }

    /// <summary>A saved fit is asked as it is.</summary>
    public void RefuseAll(ParseResult given, string file)
    {
        if (All.FirstOrDefault(given.Has) is { } option)
            throw new UsageException(
                $"{option.Name} belongs to fitting, and {file} is a fit already.",
                "Leave it out, or put the question to the table that was fitted."
            );
    }

    /// <summary>The model that these options ask for; <paramref name="also"/> is split by as well.</summary>
    public KeeperModel Model(ParseResult given, string? also)
    {
        given.RefuseBoth(_each, _together);
        given.RefuseBoth(_burst, _burstPerRow);
        var standard = Estimating(given);
        return standard with
        {
            Priors = PriorReading.Read(given.GetValue(_prior) ?? []),
            Floor = given.Read(_floor, ReadFloor) ?? standard.Floor,
            Bursts =
                given.Has(_burstPerRow) ? BurstUse.PerRow
                : given.GetValue(_burst) == "none" ? BurstUse.None
                : BurstUse.Recorded,
            Judging = new()
            {
                Sensitivity = given.ReadOr(_sensitivity, Reading.ShareOrEnd, 1),
                Specificity = given.ReadOr(_specificity, Reading.ShareOrEnd, 1),
            },
            PoolConditions = given.GetValue(_noTerms),
            Level = given.ReadOr(_level, Reading.Share, standard.Level),
            Seed = given.ReadOr(_seed, Reading.Whole, standard.Seed),
            Each = Splitting(given, standard, also),
        };
    }

    private static Ceiling ReadCeiling(string option, string text) =>
        text switch
        {
            "one" => Ceiling.One,
            "estimated" => Ceiling.Estimated,
            _ => Reading.ShareOrEnd(option, text) is var value and > 0
                ? Ceiling.Fixed(value)
                : throw Reading.Refused(option, text, "leaves no keepers at all.", "Write one, estimated, or a rate above 0."),
        };

    private static Floor ReadFloor(string option, string text) =>
        text == "estimated" ? Floor.Estimated
        : Reading.ShareOrEnd(option, text) is var value and < 1 ? Floor.Fixed(value)
        : throw Reading.Refused(option, text, "leaves no rejects at all.", "Write 0, estimated, or a rate below 1.");
}
