namespace Handhold;

public sealed partial record KeeperModel
{
    private void CheckVaries()
    {
        if (Varies.IsEmpty)
            return;
        Refuse(
            Estimator == Estimator.BiasReduced,
            $"Levels are to vary, and the {Estimator} estimator fits each curve by itself. Use Estimator.Posterior or Estimator.Likelihood, or let them split the table into curves (Each)."
        );
        if (Estimator == Estimator.Likelihood)
            CheckVariesByLikelihood();
        else
            CheckVariesByPosterior();
        Refuse(
            Nodes > 1 && Varies is not [{ Part: VaryingPart.Intercept, Term: null }],
            FormattableString.Invariant(
                $"{Nodes} quadrature nodes were given, and more varies than one intercept. Leave them out, or give 1: the method is Laplace's."
            )
        );
        foreach (var varying in Varies)
        {
            foreach (var column in varying.Path)
            {
                Refuse(string.IsNullOrWhiteSpace(column), "A column that varies, or that another lies within, has no name. Name a column.");
                Refuse(
                    Each.Contains(column),
                    $"The column {column} cannot both split the table into curves and tell levels apart within each. Choose one of them."
                );
            }

            Refuse(Terms.Contains(varying.Column), $"The column {varying.Column} cannot both be a term and vary. Choose one of them.");
            CheckTwice(varying);
            Refuse(
                varying.Path.Distinct().Count() < varying.Path.Length,
                $"The column {varying.Column} lies within itself. Leave that out."
            );
        }
    }

    private void CheckVariesByLikelihood()
    {
        Refuse(
            Luck != LuckKind.None,
            $"{Luck} luck of bursts is asked for beside levels that vary. Let the burst vary as well, within its session, or use LuckKind.None or Estimator.Posterior."
        );
        Refuse(
            Ceiling != Ceiling.One || Floor.Value is not 0,
            "Levels are to vary, and ceiling and floor are not one and zero. Use Ceiling.One and Floor.Zero, or Estimator.Posterior."
        );
    }

    private void CheckVariesByPosterior()
    {
        Refuse(
            Luck == LuckKind.Normal && Varies.FirstOrDefault(v => v.Column is "session" or "burst") is not null,
            "Sessions or bursts are to vary, and normal luck is their variation already. Leave them out of what varies, or use LuckKind.None."
        );
        Refuse(
            Varies.All(v => v.Term is not null),
            $"Only terms are to vary, and in the posterior half points or steepness vary beside them. Let the intercept of {Varies[0].Column} vary as well, or use Estimator.Likelihood."
        );
    }

    /// <summary>A column varies once in height and slope, and once in each term.</summary>
    private void CheckTwice(Varying varying)
    {
        Varying[] alike = [.. Varies.Where(v => v.Column == varying.Column)];
        Refuse(
            alike.Count(v => v.Term is null) > 1 || alike.Count(v => Overlap(v.Term, varying.Term)) > 1,
            $"The column {varying.Column} varies twice{(varying.Term is null ? "" : $" in {varying.Term}")}. Name it once."
        );
        Refuse(
            alike.Any(v => !v.Within.SequenceEqual(varying.Within)),
            $"The column {varying.Column} varies twice, and lies within other columns each time. Let it lie within the same."
        );
        if (varying.Term is not { } term)
            return;
        Refuse(
            varying.Part != VaryingPart.Intercept,
            $"The column {varying.Column} is to vary in {varying.Part} and in the term {term}. Give the term an entry of its own."
        );
        Refuse(
            !Terms.IsEmpty && !Terms.Any(t => Overlap(t, term)),
            $"The term {term} is to vary by {varying.Column}, and is not among the terms. Name it among them as well."
        );

        static bool Overlap(string? one, string? other) =>
            one is not null
            && other is not null
            && (
                one == other
                || one.StartsWith(other + "=", StringComparison.Ordinal)
                || other.StartsWith(one + "=", StringComparison.Ordinal)
            );
    }
}
