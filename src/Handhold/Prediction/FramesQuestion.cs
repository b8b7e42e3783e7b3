namespace Handhold.Prediction;

/// <summary>How many frames bring the wanted keepers home.</summary>
internal static class FramesQuestion
{
    private const int MostCounted = 100;

    internal static FramesNeededAnswer Answer(
        Question question,
        ShutterSpeed at,
        int keepers,
        double assurance,
        CancellationToken cancellation
    )
    {
        var x = at.Log2Seconds;
        var luck = LuckUsed.Of(question, x);
        if (question.Barred(at) is { } barred)
            return new(question, at, keepers, assurance, null, [], 0, null, luck, false, [barred]);
        var law = ShootLaw.For(question, x);
        var frames = Smallest(law, keepers, assurance, question.Options.Budget, cancellation);
        var attained = law.AtLeast(keepers, frames ?? question.Options.Budget, cancellation);
        var statuses = question.Remarks(at);
        if (frames is null)
            statuses = statuses.Insert(
                0,
                new(
                    StatusCode.OverBudget,
                    $"{Say.Frames(question.Options.Budget)} at {at} bring {Say.Keepers(keepers)} with an assurance of only {Say.Percent(attained)}. Use a support where the place allows one, a faster speed, or several bursts with a fresh grip."
                )
            );
        statuses = question.WithPriorCheck(
            statuses,
            q => Smallest(ShootLaw.For(q, x), keepers, assurance, question.Options.Budget, cancellation),
            "the number of frames"
        );
        var rejects = question.AsRejects(q => Answer(q, at, keepers, assurance, cancellation));
        statuses = question.WithMissing(
            statuses,
            rejects is null || rejects.Frames == frames ? null
                : rejects.Frames is { } n ? $"{Say.Frames(n)} would be needed"
                : "no number of frames within the budget would do"
        );
        var hasSplits = question.Options.BurstsOf is null && question.Law.SharesLuck;
        return new(
            question,
            at,
            keepers,
            assurance,
            frames,
            frames is { } found ? law.Bursts(found) : [],
            attained,
            question.Rate(x),
            luck,
            question.Tested(x),
            statuses
        )
        {
            FindSplits = hasSplits
                ? new(() => SplitQuestion.Splits(question.Law, x, keepers, assurance, frames ?? question.Options.Budget, cancellation))
                : null,
            FindBudgetSplit =
                hasSplits && frames is null
                    ? new(() => SplitQuestion.OfBudget(question.Law, x, keepers, question.Options.Budget, cancellation))
                    : null,
            FindProbabilities = frames <= MostCounted ? new(() => law.Counts(frames.Value, cancellation)) : null,
            Conditions = question.Options.Conditions,
            AsRejects = rejects,
        };
    }

    /// <summary>Smallest n within the budget; the chance rises with n, so doubling and bisection, and every larger n will do as well.</summary>
    internal static int? Smallest(ShootLaw law, int keepers, double assurance, int budget, CancellationToken cancellation)
    {
        var (fails, holds) = (keepers - 1, keepers);
        while (holds < budget && law.AtLeast(keepers, holds, cancellation) < assurance)
            (fails, holds) = (holds, Math.Min(budget, 2 * holds));
        if (holds >= budget)
        {
            holds = budget;
            if (law.AtLeast(keepers, holds, cancellation) < assurance)
                return null;
        }

        while (holds - fails > 1)
        {
            var middle = (fails + holds) / 2;
            if (law.AtLeast(keepers, middle, cancellation) >= assurance)
                holds = middle;
            else
                fails = middle;
        }

        return holds;
    }
}
