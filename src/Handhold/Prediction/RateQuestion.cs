namespace Handhold.Prediction;

/// <summary>The keeper rate at a speed.</summary>
internal static class RateQuestion
{
    internal static RateAnswer Answer(Question question, ShutterSpeed at)
    {
        var x = at.Log2Seconds;
        var luck = LuckUsed.Of(question, x);
        if (question.Barred(at) is { } barred)
            return new(question, at, null, luck, false, [barred]);
        var (rate, rejects) = (question.Rate(x), question.AsRejects(q => Answer(q, at)));
        var statuses = question.WithPriorCheck(question.Remarks(at), q => Odds(q.Law.MeanRate(x)), "the rate there");
        statuses = question.WithMissing(
            statuses,
            rejects?.Rate is { } other && rate is not null && other.Mean < rate.Interval.Lower
                ? $"the rate would be {Say.Percent(other.Mean)}, below the interval"
                : null
        );
        return new(question, at, rate, luck, question.Tested(x), statuses) { AsRejects = rejects };

        static double Odds(double p) => Math.Sqrt(p / (1 - p)); // a factor of two either way: four in the odds
    }
}
