using System.Collections.Immutable;
using System.Globalization;
using Handhold.Prediction;

namespace Handhold;

/// <summary>The calculator: frames needed when the keeper rate and the correlation within a burst are known.</summary>
public static class KnownRate
{
    private const int LargestBudget = 1_000_000;

    // A smaller rate gives no keeper in the largest budget, to the last digit of a double and far beyond.
    private const double NoKeepers = 1e-250;

    /// <summary>Smallest number of frames with P(at least <paramref name="keepers"/>) ≥ <paramref name="assurance"/>; every larger number will do as well.</summary>
    /// <remarks>
    /// Frames are independent at correlation 0. Above it, frames of one burst share a rate drawn from a beta distribution with mean
    /// <paramref name="rate"/> and the bursts share nothing: P(j of n in a burst) = C(n,j) B(j+a, n-j+b) / B(a, b), a = μ(1-ρ)/ρ, b = (1-μ)(1-ρ)/ρ.
    /// Exact to the last frame; a chance that meets the assurance but for rounding counts as met. Source: Griffiths (1973), Biometrics 29, 637-648.
    /// Checked by golden/frames-needed.
    /// </remarks>
    /// <param name="rate">Known keeper rate, 0 to 1.</param>
    /// <param name="correlation">Correlation of two frames of one burst, from 0 to below 1.</param>
    /// <param name="keepers">Keepers wanted, at least 1.</param>
    /// <param name="assurance">Assurance wanted, above 0 and below 1.</param>
    /// <param name="burstsOf">Frames a burst, the last possibly short; null: all in one burst.</param>
    /// <param name="budget">Largest number of frames considered, 1 to 1 000 000.</param>
    /// <param name="cancellation">Stops the search; many keepers in many bursts take long.</param>
    /// <exception cref="ArgumentOutOfRangeException">An argument lies outside its range.</exception>
    /// <exception cref="OperationCanceledException">The search was stopped.</exception>
    public static KnownRateAnswer FramesNeeded(
        double rate,
        double correlation,
        int keepers,
        double assurance,
        int? burstsOf = null,
        int budget = 1000,
        CancellationToken cancellation = default
    )
    {
        CheckArguments(rate, correlation, keepers, assurance, burstsOf, budget);
        var (frames, fewer) =
            rate < NoKeepers || keepers > budget ? (null, 1.0)
            : rate == 1 ? (keepers, 0.0)
            : new FrameSearch(rate, correlation, keepers, burstsOf, budget, cancellation).Smallest(Doubt(assurance));
        var bursts = frames is { } n ? Split(n, burstsOf ?? n) : [];
        ImmutableArray<Status> statuses = frames is null
            ? [Shortfall(rate, keepers, 1 - fewer, correlation > 0 && burstsOf != 1, budget)]
            : [];
        var sentence = frames is null ? statuses[0].Message : Advice(rate, correlation, keepers, 1 - fewer, bursts);
        return new(frames, bursts, 1 - fewer, statuses, sentence);
    }

    private static void CheckArguments(double rate, double correlation, int keepers, double assurance, int? burstsOf, int budget)
    {
        if (!(rate is >= 0 and <= 1))
            throw new ArgumentOutOfRangeException(nameof(rate), Text($"The keeper rate is {rate}. Give a share from 0 to 1, such as 0.2."));
        if (!(correlation is >= 0 and < 1))
            throw new ArgumentOutOfRangeException(
                nameof(correlation),
                Text($"The correlation within a burst is {correlation}. Give a number from 0 (independent frames) to below 1.")
            );
        Check.Count(keepers, 1, int.MaxValue, "Keepers wanted");
        Check.Share(assurance, "The assurance");
        Check.Count(budget, 1, LargestBudget, "Budget of frames");
        Check.Count(burstsOf ?? 1, 1, int.MaxValue, "Frames a burst", nameof(burstsOf));
    }

    // P(fewer) may be this large; the margin keeps decimals that meet the assurance exactly, such as 1 - 0.2² = 0.96, from failing by a rounding.
    private static double Doubt(double assurance) => (1 - assurance) * (1 + 1e-12) + 1e-15;

    private static ImmutableArray<int> Split(int frames, int burst) =>
        [.. Enumerable.Repeat(burst, frames / burst), .. frames % burst == 0 ? [] : new[] { frames % burst }];

    private static Status Shortfall(double rate, int keepers, double assurance, bool sharesLuck, int budget) =>
        rate == 0
            ? new(StatusCode.NotReachable, "At a keeper rate of 0 no number of frames brings a keeper. Use a support or a faster speed.")
            : new(
                StatusCode.OverBudget,
                Text(
                    $"{Many(budget, "frame")} bring {Many(keepers, "keeper")} with an assurance of only {Percent(assurance)}. Use a support, a faster speed{(sharesLuck ? ", shorter bursts with a fresh grip between them," : "")} or a larger budget."
                )
            );

    private static string Advice(double rate, double correlation, int keepers, double assurance, ImmutableArray<int> bursts)
    {
        var split = bursts switch
        {
            [_] => correlation > 0 ? " in one burst" : "",
            [var first, .., var last] when first == last => Text($" in {bursts.Length} bursts of {first}"),
            [var first, .., var last] => Text($" in {Many(bursts.Length - 1, "burst")} of {first} and one of {last}"),
            [] => "",
        };
        var luck = correlation > 0 ? Text($"two frames of a burst are correlated by {correlation:G4}") : "frames are independent";
        return Text(
            $"Shoot {Many(bursts.Sum(), "frame")}{split} for {Many(keepers, "keeper")}: the assurance is {Percent(assurance)} if the keeper rate is {100 * rate:G6} % and {luck}."
        );
    }

    private static string Many(int count, string what) => Text($"{count} {what}{(count == 1 ? "" : "s")}");

    // Rounded down, so that nothing is promised that is not kept.
    private static string Percent(double share) =>
        share switch
        {
            0 => "0 %",
            1 => "100 %",
            > 0.999 => "over 99.9 %",
            > 0 and < 0.001 => "under 0.1 %",
            _ => Text($"{Math.Floor(1000 * share + 1e-9) / 10:0.0} %"),
        };

    private static string Text(FormattableString text) => text.ToString(CultureInfo.InvariantCulture);
}
