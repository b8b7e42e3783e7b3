using System.Globalization;
using Handhold.Curves;
using Handhold.Fitting;

namespace Handhold.Prediction;

/// <summary>Luck of the tested days, and the trend over them.</summary>
/// <remarks>
/// A day's luck is its posterior beside the habitual half point. The trend is one more term, the number of the day in the order of labels, in a fit
/// of its own: its prior is that of any numeric column over its range, and every day keeps its luck, so that only what outlasts luck counts. Where levels
/// vary, a day is a photographer's, and the change that is told of is the same for all of them.
/// The prior of that luck is at least half-normal(0.43): two days differ by √2 times as much whatever the trend, and cannot tell by themselves how much.
/// </remarks>
internal static class DaysQuestion
{
    private const string Turn = "day in turn";

    /// <summary>Stops: a person's shake differs by about 30 % from occasion to occasion (Marsden and others 1969). Few days cannot show their own luck to be less.</summary>
    private const double UsualLuck = 0.43;

    internal static DaysAnswer Answer(KeeperCurve curve, CancellationToken cancellation)
    {
        if (curve.Model.Luck == LuckKind.None || (curve.TestedDays is null && curve.Varying is null))
            throw new ArgumentException(
                $"Curve {curve.Key} was fitted without the luck of days. Fit it with the posterior and normal luck, the defaults."
            );
        var (days, level) = (curve.Data.Days, curve.Model.Level);
        (WeightedValues Values, Sampling? Known)[] lucks = [.. days.Select((_, i) => Luck(curve, i))];
        var (trend, sampling) = Trend(curve, cancellation);
        return new(
            curve,
            [.. days.Select((day, i) => Luck(curve.Data, day, lucks[i].Values, level))],
            trend,
            sampling?.IsPoor == true || lucks.Any(l => l.Known?.IsPoor == true) ? [Rough] : []
        );
    }

    /// <summary>Luck of a day, and how well the points stand for it. Where levels vary, days are the grouping after the last.</summary>
    private static (WeightedValues Values, Sampling? Known) Luck(KeeperCurve curve, int day) =>
        curve.Varying is { } varying
            ? (varying.Values(varying.Days, day, d => d.Shift), varying.SamplingOf([(varying.Days, day)]))
            : (curve.TestedDays!.Value.Values(d => d.Days[day]), curve.TestedDays.Value.Sampling ?? curve.Sampling);

    private static DayLuck Luck(CurveData data, (string? Photographer, string? Session) day, WeightedValues luck, double level)
    {
        FrameCell[] cells = [.. data.Cells.Where(c => (c.Conditions.Photographer, c.Conditions.Session) == day)];
        return new(
            day.Photographer,
            day.Session,
            cells.Sum(c => c.Frames),
            cells.Sum(c => c.Keepers),
            new(luck.Quantile(0.5)),
            new(luck.Quantile((1 - level) / 2), luck.Quantile((1 + level) / 2), level)
        );
    }

    /// <summary>The status of an answer for one of several days whose points stand badly for it.</summary>
    internal static Status Rough { get; } =
        new(
            StatusCode.Approximate,
            "So many frames a day leave no room between the day's luck and the usual half point for the points that stand for them, so what is said of days is approximate."
        );

    private static (DayTrend?, Sampling?) Trend(KeeperCurve curve, CancellationToken cancellation)
    {
        var (labels, level) = (curve.Data.SessionLabels, curve.Model.Level);
        if (labels.Length < 2 || curve.Data.Days.Any(d => d.Session is null))
            return (null, null);
        var model = OtherPriors.Held(curve.Model, curve.MedianShape!) with
        {
            Each = [],
            Terms = [.. curve.Terms.Select(t => t.Name), Turn],
            PoolConditions = false,
            Priors = curve.Model.Priors with { SessionLuck = new(Math.Max(UsualLuck, curve.Model.Priors.SessionLuck.Scale)) },
        };
        var fit = model.Fit(
            [.. curve.Data.Cells.Select(c => c with { Conditions = On(c.Conditions, labels.IndexOf(c.Conditions.Session!)) })],
            null,
            cancellation
        );
        if (fit.Only.Varying is not null && fit.Only.Sampling is { IsPoor: true } poor)
            return (null, poor);
        var at = fit.Only.ReferenceConditions;
        var change = fit.Only.Term!.Change(On(at, 0), On(at, labels.Length - 1));
        CredibleInterval interval = new(change.Quantile((1 - level) / 2), change.Quantile((1 + level) / 2), level);
        var told = fit.Only.Sampling is { IsPoor: false } && (interval.Lower > 0 || interval.Upper < 0);
        return (new(labels[0], labels[^1], new(change.Quantile(0.5)), interval, 1 - change.Below(0), told), fit.Only.Sampling);
    }

    private static Conditions On(Conditions conditions, int turn) => conditions.With(Turn, turn.ToString(CultureInfo.InvariantCulture));
}
