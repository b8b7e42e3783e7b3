using System.Collections.Immutable;
using System.CommandLine;

namespace Handhold.Cli;

internal sealed partial class FitOptions
{
    private static readonly ImmutableArray<string> s_builtIn = ["focal", "stabiliser", "magnification", "subjectMotion", "firstFrame"];

    private readonly Option<string[]> _term = new("--term")
    {
        HelpName = "NAME",
        Description =
            "A column, or focal, stabiliser, magnification, subjectMotion, firstFrame, that shifts the curve; may be given several times "
            + "[those of the five that vary].",
    };
    private readonly Option<string[]> _product = new("--product")
    {
        HelpName = "A,B",
        Description = "The product of two terms, or of a term and exposure: one changes what the other does.",
    };

    /// <summary>Estimator, link, terms, ceiling and luck: what excludes what is refused here, in the words of the options.</summary>
    private KeeperModel Estimating(ParseResult given)
    {
        var estimator = given.Read(_estimator, (o, text) => Reading.Word(o, text, ["posterior", "bias-reduced", "likelihood"])) switch
        {
            "bias-reduced" => Estimator.BiasReduced,
            "likelihood" => Estimator.Likelihood,
            _ => Estimator.Posterior,
        };
        var model = KeeperModel.Default with { Estimator = estimator };
        if (given.Read(_ceiling, ReadCeiling) is { } ceiling)
            model = model with { Ceiling = ceiling };
        if (estimator == Estimator.Posterior)
            RefuseWithPosterior(given);
        else
            RefuseWithoutPosterior(given, model);
        var luck = given.Read(_luck, (o, text) => Reading.Word(o, text, ["normal", "beta-binomial", "none"]));
        return model with
        {
            Link = given.Read(_link, (o, text) => Reading.Word(o, text, ["logit", "probit", "cloglog"])) switch
            {
                "probit" => Link.Probit,
                "cloglog" => Link.Cloglog,
                _ => Link.Logit,
            },
            Luck =
                luck == "none" ? LuckKind.None
                : luck == "normal" ? LuckKind.Normal
                : luck == "beta-binomial" ? LuckKind.BetaBinomial
                : model.Luck,
            Varies = Varies(given, model),
            Nodes = Nodes(given),
            Terms = Terms(given),
            Products = Products(given),
        };
    }

    private void RefuseWithPosterior(ParseResult given)
    {
        RefuseScale(given, "stops", "likelihood");
        if (given.GetValue(_link) is "probit" or "cloglog")
            throw new UsageException(
                $"{_link.Name} {given.GetValue(_link)} is not for the posterior, which knows logit only in this version.",
                $"Add {_estimator.Name} likelihood or bias-reduced, or leave {_link.Name} out."
            );
        if (given.GetValue(_luck) == "beta-binomial")
            throw new UsageException(
                $"{_luck.Name} beta-binomial is not for the posterior, whose luck is normal.",
                $"Add {_estimator.Name} likelihood, or leave {_luck.Name} out."
            );
    }

    /// <summary>Each estimator has one scale; the other is another's.</summary>
    private void RefuseScale(ParseResult given, string own, string other)
    {
        if (given.Read(_scale, (o, text) => Reading.Word(o, text, ["stops", "link"])) is { } scale && scale != own)
            throw new UsageException(
                $"{_scale.Name} {scale} is for {_estimator.Name} {other}; this estimator speaks in {own}.",
                $"Add {_estimator.Name} {other}, or leave {_scale.Name} out."
            );
    }

    private void RefuseWithoutPosterior(ParseResult given, KeeperModel model)
    {
        var estimator = given.GetValue(_estimator);
        RefuseScale(given, "link", "posterior");
        if (given.Has(_prior))
            throw new UsageException(
                $"{_prior.Name} has no place with {_estimator.Name} {estimator}, which uses no priors.",
                "Leave one of them out."
            );
        if (given.GetValue(_luck) is var luck and ("normal" or "beta-binomial"))
        {
            if (model.Estimator == Estimator.BiasReduced)
                throw new UsageException(
                    $"{_luck.Name} {luck} is not for {_estimator.Name} {estimator}, which takes frames as independent.",
                    $"Use {_estimator.Name} posterior or likelihood for shared luck, or leave {_luck.Name} out."
                );
            if (model.Ceiling.Value is null || given.GetValue(_floor) == "estimated")
                throw new UsageException(
                    $"{_estimator.Name} {estimator} cannot estimate a ceiling or floor beside {_luck.Name} {luck}.",
                    $"Give a number, or use {_estimator.Name} posterior."
                );
        }

        if (model.Estimator == Estimator.BiasReduced && (model.Ceiling.Value is null || given.GetValue(_floor) == "estimated"))
            throw new UsageException(
                $"{_estimator.Name} bias-reduced cannot estimate a ceiling or floor.",
                $"Give a number, or use {_estimator.Name} posterior or likelihood."
            );
    }

    private int? Nodes(ParseResult given)
    {
        if (!given.Has(_nodes))
            return null;
        if (given.GetValue(_estimator) != "likelihood" || (given.GetValue(_luck) != "normal" && !_vary.AreGiven(given)))
            throw new UsageException(
                $"{_nodes.Name} is for {_estimator.Name} likelihood with {_luck.Name} normal or {_vary.Name}, which alone integrate by quadrature.",
                $"Add them, or leave {_nodes.Name} out."
            );
        var nodes = given.ReadValue(_nodes, Reading.Count);
        if (nodes > 200)
            throw Reading.Refused(_nodes.Name, given.GetValue(_nodes)!, "is too many.", "Give 1 to 200.");
        if (nodes > 1 && _vary.AreGiven(given) && _vary.Read(given) is not [{ Part: VaryingPart.Intercept, Term: null }])
            throw Reading.Refused(
                _nodes.Name,
                given.GetValue(_nodes)!,
                "is for one varying intercept; where more varies the method is Laplace's.",
                $"Leave {_nodes.Name} out."
            );
        return nodes;
    }

    private ImmutableArray<Varying> Varies(ParseResult given, KeeperModel model)
    {
        var varies = _vary.Read(given);
        if (varies.IsEmpty)
            return varies;
        if (model.Estimator == Estimator.BiasReduced)
            throw new UsageException(
                $"{_vary.Name} is for {_estimator.Name} posterior or likelihood; bias-reduced fits each curve by itself.",
                $"Use one of them, or leave {_vary.Name} out: {_each.Name} splits the table by any column."
            );
        var terms = given.GetValue(_term) ?? [];
        _vary.CheckTerms(varies, term => terms.Length > 0 ? terms.Contains(term) : !given.GetValue(_noTerms) && s_builtIn.Contains(term));
        if (model.Estimator == Estimator.Likelihood)
            RefuseBesideVarying(given, model);
        else if (varies.All(v => v.Term is not null))
            throw Reading.Refused(
                _vary.Name,
                $"{varies[0].Column}={varies[0].Term}",
                "stands alone: in the posterior half-keeper speeds or steepness vary beside it.",
                $"Add {_vary.Name} {varies[0].Column}=intercept, or use {_estimator.Name} likelihood."
            );
        else if (given.GetValue(_luck) != "none" && varies.FirstOrDefault(v => v.Column is "session" or "burst") is { } luck)
            throw Reading.Refused(
                _vary.Name,
                luck.Column,
                "varies already: that is its luck.",
                $"Leave it out of {_vary.Name}, or add {_luck.Name} none."
            );
        if (varies.FirstOrDefault(v => terms.Contains(v.Column)) is { } both)
            throw Reading.Refused(
                _term.Name,
                both.Column,
                "varies as well.",
                $"A column is either a {_term.Name} or {_vary.Name}: choose one."
            );
        return varies;
    }

    private void RefuseBesideVarying(ParseResult given, KeeperModel model)
    {
        if (given.GetValue(_luck) is "normal" or "beta-binomial")
            throw new UsageException(
                $"{_luck.Name} {given.GetValue(_luck)} has no place beside {_vary.Name} with {_estimator.Name} likelihood.",
                $"Let the burst vary as well, {_vary.Name} burst=intercept, use {_estimator.Name} posterior, or leave one of them out."
            );
        if (model.Ceiling != Ceiling.One || given.GetValue(_floor) is not (null or "0"))
            throw new UsageException(
                $"{_vary.Name} with {_estimator.Name} likelihood is for {_ceiling.Name} one and {_floor.Name} 0.",
                $"Leave {_ceiling.Name} and {_floor.Name} out, or use {_estimator.Name} posterior."
            );
    }

    private ImmutableArray<string> Terms(ParseResult given)
    {
        var terms = given.GetValue(_term) ?? [];
        foreach (var term in terms)
        {
            if (term == "exposure" || string.IsNullOrWhiteSpace(term))
                throw Reading.Refused(_term.Name, term, "is no term: the exposure is there already.", "Name a column.");
            if (terms.Count(t => t == term) > 1)
                throw Reading.Refused(_term.Name, term, "is there twice.", "Give it once.");
        }

        if (terms.Length > 0)
            given.RefuseBoth(_term, _noTerms);
        return [.. terms];
    }

    private ImmutableArray<TermProduct> Products(ParseResult given)
    {
        var (terms, products) = (given.GetValue(_term) ?? [], ImmutableArray.CreateBuilder<TermProduct>());
        foreach (var text in given.GetValue(_product) ?? [])
        {
            if (Reading.Columns(_product.Name, text) is not [var first, var second])
                throw Reading.Refused(_product.Name, text, "is not two terms.", $"Write {_product.Name} A,B.");
            foreach (var part in new[] { first, second })
                if (part != "exposure" && !terms.Contains(part) && (terms.Length > 0 || !s_builtIn.Contains(part)))
                    throw Reading.Refused(_product.Name, text, $"needs {part} by itself as well.", $"Add {_term.Name} {part}.");
            if (products.Any(p => (p.First, p.Second) == (first, second) || (p.First, p.Second) == (second, first)))
                throw Reading.Refused(_product.Name, text, "is there twice.", "Give it once.");
            products.Add(new(first, second));
        }

        return products.ToImmutable();
    }

    private void RefuseAbsentTerm(FrameTable table, string term)
    {
        if (!s_builtIn.Contains(term))
            RefuseAbsent(table, _term.Name, term);
    }
}
