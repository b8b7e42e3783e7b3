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
            Refuse(
                Luck == LuckKind.Normal && Varies.FirstOrDefault(v => v.Column is "session" or "burst") is not null,
                "Sessions or bursts are to vary, and normal luck is their variation already. Leave them out of what varies, or use LuckKind.None."
            );
        Refuse(
            Nodes > 1 && Varies is not [{ Part: VaryingPart.Intercept }],
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
            Refuse(Varies.Count(v => v.Column == varying.Column) > 1, $"The column {varying.Column} varies twice. Name it once.");
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
}
