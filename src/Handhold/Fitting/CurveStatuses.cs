using System.Collections.Immutable;
using System.Globalization;
using Handhold.Curves;

namespace Handhold.Fitting;

/// <summary>What a reader of a fitted curve should know.</summary>
internal static class CurveStatuses
{
    private const double Rising = 1.96;
    private const double Misfit = 0.01;
    private const double Dominated = 0.9;

    internal static ImmutableArray<Status> Of(
        KeeperModel model,
        CurveRows rows,
        ImmutableArray<ParameterSummary> parameters,
        ImmutableArray<ExpectedCount> expected
    )
    {
        var statuses = ImmutableArray.CreateBuilder<Status>();
        var (data, single) = (rows.Data, rows.Data.Speeds.Length == 1);
        if (!AddExtremes(data, statuses) && !single)
        {
            if (RisingScore(data) is var score && score > Rising)
                statuses.Add(
                    new(
                        StatusCode.WrongDirection,
                        $"Keepers became more frequent at slower speeds (score {score.ToString("0.0", CultureInfo.InvariantCulture)} sds). Check the exposure column and the verdicts; the curve is fitted falling all the same."
                    )
                );
            else
                AddSeparation(data, statuses);
        }

        AddPriorDominated(model, rows.HalfPoint, [], parameters, statuses);
        AddBursts(model, data, statuses);
        AddShooting(data, statuses);
        AddMisfit(expected, statuses);
        return statuses.ToImmutable();
    }

    /// <summary>One speed only; all keepers or none: whether that was so.</summary>
    internal static bool AddExtremes(CurveData data, ImmutableArray<Status>.Builder statuses)
    {
        if (data.Speeds.Length == 1)
            statuses.Add(
                new(
                    StatusCode.SingleExposure,
                    $"All frames were shot at {data.Fastest}, so the steepness rests on its prior. Shoot a stop or two faster and slower."
                )
            );
        if (data.Keepers == data.Frames)
            statuses.Add(
                new(
                    StatusCode.AllKeepers,
                    $"Every frame was a keeper down to {data.Slowest}: the data say only that the limit is slower. Test slower speeds."
                )
            );
        else if (data.Keepers == 0)
            statuses.Add(
                new(
                    StatusCode.NoKeepers,
                    $"No frame was a keeper, even at {data.Fastest}: the data say only that the limit is faster. Test faster speeds, and check focus and criterion."
                )
            );
        return data.Keepers == data.Frames || data.Keepers == 0;
    }

    private static void AddOrder(CurveData data, ImmutableArray<Status>.Builder statuses)
    {
        if (data.IsOrderConfounded)
            statuses.Add(
                new(
                    StatusCode.OrderConfounded,
                    "Within a session the speeds were shot in order, so practice, fatigue and failing light look like effects of exposure. Shoot the speeds in mixed order."
                )
            );
    }

    /// <summary>What is wrong with how the frames came about: the order they were shot in, and those deleted before judging.</summary>
    internal static void AddShooting(CurveData data, ImmutableArray<Status>.Builder statuses)
    {
        AddOrder(data, statuses);
        if (RejectsDeleted.Of(data) is { } deleted)
            statuses.Add(deleted);
    }

    internal static void AddBursts(KeeperModel model, CurveData data, ImmutableArray<Status>.Builder statuses)
    {
        if (model.Luck == LuckKind.Normal && data.Bursts == 0)
            statuses.Add(
                new(
                    StatusCode.BurstsNotAssessable,
                    "No two frames share a recorded burst, so the luck within a burst rests on its prior. Record bursts to learn it."
                )
            );
    }

    /// <summary>Score test of no slope: positive when keepers rise with exposure, in sds.</summary>
    private static double RisingScore(CurveData data)
    {
        double n = data.Frames;
        var p = data.Keepers / n;
        var mean = data.Speeds.Sum(s => s.Frames * s.Exposure.Log2Seconds) / n;
        var score = data.Speeds.Sum(s => (s.Exposure.Log2Seconds - mean) * (s.Keepers - s.Frames * p));
        var variance = p * (1 - p) * data.Speeds.Sum(s => s.Frames * (s.Exposure.Log2Seconds - mean) * (s.Exposure.Log2Seconds - mean));
        return score / Math.Sqrt(variance);
    }

    private static void AddSeparation(CurveData data, ImmutableArray<Status>.Builder statuses)
    {
        var slowestKeeper = data.Speeds.Last(s => s.Keepers > 0);
        var fastestReject = data.Speeds.First(s => s.Keepers < s.Frames);
        if (slowestKeeper.Exposure.Seconds < fastestReject.Exposure.Seconds)
            statuses.Add(
                new(
                    StatusCode.Separated,
                    $"Every frame up to {slowestKeeper.Exposure} was a keeper and every one from {fastestReject.Exposure} on a reject: the limit lies between them, and how steep it is rests on the prior. Frames between these speeds would tell."
                )
            );
        else if (slowestKeeper.Exposure == fastestReject.Exposure)
            statuses.Add(
                new(
                    StatusCode.QuasiSeparated,
                    $"Keepers and rejects meet only at {slowestKeeper.Exposure}: how steep the curve is rests partly on the prior. Frames a third of a stop to either side would tell."
                )
            );
    }

    /// <summary>Parameters whose posterior is hardly narrower than their prior.</summary>
    /// <param name="model">Priors of all curves.</param>
    /// <param name="halfPoint">Prior of tau0.</param>
    /// <param name="effects">Effects of terms by name, with their priors.</param>
    /// <param name="parameters">The posterior.</param>
    /// <param name="statuses">Where to.</param>
    internal static void AddPriorDominated(
        KeeperModel model,
        NormalPrior halfPoint,
        IEnumerable<(string Name, NormalPrior Prior)> effects,
        ImmutableArray<ParameterSummary> parameters,
        ImmutableArray<Status>.Builder statuses
    )
    {
        var priors = effects.ToDictionary(
            e => e.Name,
            e => (Words: e.Name == "log2HandSpeed" ? "the speed of the hands" : e.Name, Sd: e.Prior.StandardDeviation)
        );
        priors["tau0"] = ("the half point", halfPoint.StandardDeviation);
        priors["log2b"] = ("the steepness", model.Priors.Steepness.LogStandardDeviation / Math.Log(2));
        priors["ceiling"] = ("the ceiling", Sd(model.Priors.CeilingLoss));
        priors["floor"] = ("the floor", Sd(model.Priors.Floor));
        string[] names =
        [
            .. parameters
                .Where(p => priors.TryGetValue(p.Name, out var prior) && p.StandardDeviation > Dominated * prior.Sd)
                .Select(p => priors[p.Name].Words),
        ];
        if (names.Length > 0)
            statuses.Add(
                new(
                    StatusCode.PriorDominated,
                    $"The data hardly inform {Listing.And(names)}: what is said of {(names.Length == 1 ? "it" : "them")} is mostly the prior."
                )
            );
    }

    private static double Sd(BetaPrior prior) =>
        Math.Sqrt(prior.A * prior.B / ((prior.A + prior.B) * (prior.A + prior.B) * (prior.A + prior.B + 1)));

    /// <summary>The speed whose count the other speeds find most unlikely, when even with all speeds allowed for it has a chance below one per cent.</summary>
    /// <param name="expected">What was expected.</param>
    /// <param name="statuses">Where to.</param>
    /// <param name="looked">Speeds looked at, where not all are given.</param>
    internal static void AddMisfit(ImmutableArray<ExpectedCount> expected, ImmutableArray<Status>.Builder statuses, int? looked = null)
    {
        if (expected.MinBy(e => e.Chance) is not { } worst || worst.Chance * (looked ?? expected.Length) >= Misfit)
            return;
        var (seen, rate) = (worst.Seen, (double)worst.Seen.Keepers / worst.Seen.Frames);
        statuses.Add(
            new(
                StatusCode.CurveDoesNotFit,
                string.Create(
                    CultureInfo.InvariantCulture,
                    $"At {seen.Exposure}, {seen.Keepers} of {seen.Frames} frames were keepers: {100 * Math.Abs(rate - worst.Rate):0} points {(rate < worst.Rate ? "below" : "above")} the {100 * worst.Rate:0} % that the other speeds lead to expect, farther than chance and luck go. Look for vibration of the shutter, a change of grip, or a slip in the table."
                )
            )
        );
    }
}
