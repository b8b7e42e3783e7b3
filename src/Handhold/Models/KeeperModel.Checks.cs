namespace Handhold;

public sealed partial record KeeperModel
{
    /// <summary>The name of <c>log2Exposure</c> among the parts of a product.</summary>
    internal const string ExposureTerm = "exposure";

    /// <summary>Beyond these ranges no belief about hands and cameras lies, and no grid resolves what does.</summary>
    private void CheckPriors()
    {
        var (p, anchor) = (Priors, Priors.Anchor);
        (string Name, NormalPrior? Prior)[] normals =
        [
            ("tau0", p.HalfPoint),
            ("firstFrame", p.FirstFrame),
            ("columnOverRange", p.ColumnOverRange),
            ("columnLevel", p.ColumnLevel),
            ("steepnessOverRange", p.SteepnessOverRange),
            ("print", anchor.Print),
            ("pixel", anchor.Pixel),
            ("otherCriterion", anchor.OtherCriterion),
            ("noFocalLength", anchor.NoFocalLength),
            ("focal", anchor.FocalLength),
            ("magnification", anchor.Magnification),
            ("ratedStop", anchor.RatedStop),
            ("unratedStabiliser", anchor.UnratedStabiliser),
            ("slightMotion", anchor.SlightMotion),
            ("briskMotion", anchor.BriskMotion),
        ];
        foreach (var (name, prior) in normals)
        {
            InRange(prior?.Mean ?? 0, -1100, 1100, $"The prior mean of {name}");
            InRange(prior?.StandardDeviation ?? 1, 1e-6, 100, $"The prior sd of {name}");
        }

        InRange(p.Steepness.Median, 0.01, 100, "The prior median of b");
        InRange(p.Steepness.LogStandardDeviation, 1e-4, 3, "The prior log-sd of b");
        InRange(anchor.HandSpeed.Median, 1e-6, 1e6, "The prior median of handSpeed");
        InRange(anchor.HandSpeed.LogStandardDeviation, 1e-4, 10, "The prior log-sd of handSpeed");
        foreach (var (name, prior) in new[] { ("ceilingLoss", p.CeilingLoss), ("floor", p.Floor) })
        {
            InRange(prior.A, 1e-3, 1e6, $"A shape of the prior of {name}");
            InRange(prior.B, 1e-3, 1e6, $"A shape of the prior of {name}");
        }

        InRange(p.SessionLuck.Scale, 1e-6, 20, "The prior scale of sessionLuck");
        InRange(p.BurstLuck.Scale, 1e-6, 20, "The prior scale of burstLuck");
        CheckSpreads(p.Spreads);
    }

    private static void CheckSpreads(SpreadPriors spreads)
    {
        (string Name, HalfNormalPrior Prior)[] priors =
        [
            ("photographerTau", spreads.PhotographerTau),
            ("photographerLogB", spreads.PhotographerLogB),
            ("setupTau", spreads.SetupTau),
            ("setupLogB", spreads.SetupLogB),
            ("otherTau", spreads.OtherTau),
            ("otherLogB", spreads.OtherLogB),
            ("term", spreads.Term),
        ];
        foreach (var (name, prior) in priors)
            InRange(prior.Scale, 1e-6, 20, $"The prior scale of {name}");
        InRange(spreads.Correlation.Shape, 0.5, 1e6, "The prior shape of correlation");
    }

    private static void InRange(double value, double lowest, double highest, string what) =>
        Refuse(
            !(value >= lowest && value <= highest),
            FormattableString.Invariant($"{what} is {value}. It must lie between {lowest} and {highest}.")
        );

    private void CheckJudging()
    {
        var (sensitivity, specificity) = (Judging.Sensitivity, Judging.Specificity);
        Refuse(
            !(sensitivity is > 0 and <= 1 && specificity is > 0 and <= 1 && sensitivity + specificity > 1),
            FormattableString.Invariant(
                $"The sensitivity is {sensitivity} and the specificity {specificity}. Each must be above 0 and at most 1, and together above 1, or verdicts would say nothing."
            )
        );
    }

    private void CheckEstimator()
    {
        Refuse(
            Nodes is < 1 or > 200,
            FormattableString.Invariant($"{Nodes} quadrature nodes were asked for. Give 1 to 200, or leave them out.")
        );
        Refuse(
            Nodes is not null && (Estimator != Estimator.Likelihood || (Luck != LuckKind.Normal && Varies.IsEmpty)),
            "Quadrature nodes were given, and only the likelihood with normal luck or levels that vary has any. Leave them out."
        );
        if (Estimator == Estimator.Posterior)
        {
            Refuse(
                Luck == LuckKind.BetaBinomial,
                "The posterior knows normal luck, and beta-binomial luck was asked for. Use LuckKind.Normal, or Estimator.Likelihood."
            );
            Refuse(
                Link != Link.Logit,
                $"The posterior knows the logit link only, and {Link} was asked for. Use Estimator.Likelihood or Estimator.BiasReduced, or leave the link out."
            );
            return;
        }

        Refuse(
            Judging != Judging.Perfect,
            $"The {Estimator} estimator takes verdicts as they are, and a sensitivity or specificity was given. Use Estimator.Posterior, or leave them out."
        );
        Refuse(
            Luck != LuckKind.None && (Ceiling.Value is null || Floor.Value is null),
            $"{Luck} luck is asked of the likelihood, and a ceiling or floor is to be estimated as well. Use Estimator.Posterior for that, or fix it."
        );
        if (Estimator != Estimator.BiasReduced)
            return;
        Refuse(
            Luck != LuckKind.None,
            $"The {Estimator} estimator takes frames as independent, and {Luck} luck was asked for. Use Estimator.Likelihood or Estimator.Posterior, or LuckKind.None."
        );
        Refuse(
            Ceiling.Value is null || Floor.Value is null,
            "The bias-reduced estimator needs ceiling and floor one, zero or fixed, and one is to be estimated. Use Estimator.Posterior or Estimator.Likelihood for that, or fix it."
        );
    }

    private void CheckTerms()
    {
        foreach (var term in Terms)
        {
            Refuse(string.IsNullOrWhiteSpace(term), "A term has no name. Name a column or a built-in term.");
            Refuse(term == ExposureTerm, "The exposure is a term already. Leave it out of the terms.");
            Refuse(Terms.Count(t => t == term) > 1, $"The term {term} is named twice. Name it once.");
            Refuse(
                Each.Contains(term),
                $"The column {term} cannot both split the table into curves and be a term of each. Choose one of them."
            );
        }

        Refuse(PoolConditions && !Terms.IsEmpty, "Terms are named, and conditions are to be pooled without any. Choose one of them.");
        foreach (var (first, second) in Products)
        {
            Refuse(first == second, $"The product of {first} with itself is none. Name two terms.");
            foreach (var part in new[] { first, second })
                Refuse(
                    part != ExposureTerm && !Terms.IsEmpty && !Terms.Contains(part),
                    $"The product {first},{second} needs the term {part} by itself as well. Name it among the terms."
                );
        }
    }

    private static void Refuse(bool wrong, string message)
    {
        if (wrong)
            throw new ArgumentException(message);
    }
}
