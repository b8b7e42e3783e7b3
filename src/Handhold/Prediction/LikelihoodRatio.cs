using System.Collections.Immutable;
using System.Globalization;
using Handhold.Kernels;

namespace Handhold;

/// <summary>Two nested likelihood fits of the same frames: how much the larger gains.</summary>
/// <remarks>Twice the log-likelihood gained is about chi-square with as many degrees of freedom as coefficients added. Source: Wilks (1938), Annals of Mathematical Statistics 9, 60-62.</remarks>
public sealed class LikelihoodRatio
{
    private LikelihoodRatio(double statistic, int degreesOfFreedom, ImmutableArray<string> added) =>
        (Statistic, DegreesOfFreedom, Added) = (statistic, degreesOfFreedom, added);

    /// <summary>Twice the log-likelihood gained, never negative but for rounding.</summary>
    public double Statistic { get; }

    /// <summary>Coefficients added.</summary>
    public int DegreesOfFreedom { get; }

    /// <summary>Their names.</summary>
    public ImmutableArray<string> Added { get; }

    /// <summary>Chance of a gain as large, were the smaller fit true.</summary>
    public double PValue => ChiSquare.Above(Math.Max(0, Statistic), DegreesOfFreedom);

    /// <summary>Akaike's criterion of the larger less that of the smaller: negative where the larger predicts better.</summary>
    public double AkaikeDifference => 2 * DegreesOfFreedom - Statistic;

    /// <summary>The comparison as a person would say it.</summary>
    public string Sentence =>
        string.Create(
            CultureInfo.InvariantCulture,
            $"With {Listing.And(Added)} twice the log-likelihood is {Statistic:0.00} higher for {DegreesOfFreedom} more coefficient{(DegreesOfFreedom == 1 ? "" : "s")}: a chance of {PValue:0.####} if {(DegreesOfFreedom == 1 ? "it" : "they")} did nothing."
        );

    /// <inheritdoc cref="Sentence" />
    public override string ToString() => Sentence;

    /// <summary>Compares two fits.</summary>
    /// <param name="larger">The fit with more terms.</param>
    /// <param name="smaller">The fit whose columns the larger has as well.</param>
    /// <exception cref="ArgumentException">The two cannot be compared; the message says why: another estimator, link, ceiling or floor, other frames, or columns that are not nested.</exception>
    public static LikelihoodRatio Of(KeeperCurve larger, KeeperCurve smaller)
    {
        ArgumentNullException.ThrowIfNull(larger);
        ArgumentNullException.ThrowIfNull(smaller);
        CheckKinds(larger, smaller);
        CheckFrames(larger.Data, smaller.Data);
        var (all, some) = (Columns(larger), Columns(smaller));
        if (some.Except(all).ToArray() is [_, ..] strange)
            throw Incomparable(
                $"the smaller has {Listing.And(strange)}, which the larger has not",
                "Compare nested fits, or look at Akaike's criterion of each"
            );
        ImmutableArray<string> added = [.. all.Except(some)];
        return added.IsEmpty
            ? throw Incomparable("both have the same columns", "Add a term to one of them")
            : new(2 * (larger.LogLikelihood - smaller.LogLikelihood), added.Length, added);
    }

    private static ImmutableArray<string> Columns(KeeperCurve curve) => curve.Linear!.Likelihood.Layout.Columns;

    private static void CheckKinds(KeeperCurve larger, KeeperCurve smaller)
    {
        foreach (var curve in new[] { larger, smaller })
            if (curve.Model.Estimator != Estimator.Likelihood)
                throw Incomparable(
                    $"one was estimated by {curve.Estimator}, whose maxima under different columns are not on one scale",
                    "Fit both with Estimator.Likelihood"
                );
        var (a, b) = (larger.Model, smaller.Model);
        if (a.Link != b.Link)
            throw Incomparable($"their links are {a.Link} and {b.Link}", "Fit both with one link");
        if (a.Ceiling.Value != b.Ceiling.Value || a.Floor.Value != b.Floor.Value)
            throw Incomparable("their ceilings or floors are not treated alike", "Fit both with the same ceiling and floor");
    }

    /// <summary>The same counts at the same speeds, also within everything that both tell apart.</summary>
    private static void CheckFrames(CurveData larger, CurveData smaller)
    {
        if (larger.Frames != smaller.Frames || larger.Keepers != smaller.Keepers)
            throw Incomparable(
                FormattableString.Invariant(
                    $"one rests on {larger.Keepers} keepers of {larger.Frames} frames, the other on {smaller.Keepers} of {smaller.Frames}"
                ),
                "Fit both to the same frames"
            );
        string[] told =
        [
            .. Conditions.ColumnNames.Concat(larger.Cells[0].Conditions.Others.Keys).Where(c => Tells(larger, c) && Tells(smaller, c)),
        ];
        if (!Counts(larger, told).SetEquals(Counts(smaller, told)))
            throw Incomparable("their counts differ from speed to speed or among conditions", "Fit both to the same frames");
    }

    private static bool Tells(CurveData data, string column) => data.Cells.Any(c => c.Conditions[column] is not null);

    private static HashSet<(double, string, int, int)> Counts(CurveData data, string[] told) =>
        [
            .. data
                .Cells.GroupBy(c => (c.Exposure.Seconds, string.Join('\n', told.Select(column => c.Conditions[column]))))
                .Select(g => (g.Key.Seconds, g.Key.Item2, g.Sum(c => c.Frames), g.Sum(c => c.Keepers))),
        ];

    private static ArgumentException Incomparable(string why, string remedy) => new($"These two fits cannot be compared: {why}. {remedy}.");
}
