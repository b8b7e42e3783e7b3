using System.Collections.Immutable;
using System.Globalization;

namespace Handhold.Plots;

/// <summary>The words on a plot.</summary>
internal static class CurveWords
{
    /// <summary>Situations that make a picture misleading unless it says so.</summary>
    private static readonly ImmutableHashSet<StatusCode> Told =
    [
        StatusCode.WrongDirection,
        StatusCode.CurveDoesNotFit,
        StatusCode.FramesDeleted,
        StatusCode.Approximate,
        StatusCode.RestsOnPrior,
        StatusCode.RestsOnMissing,
    ];

    /// <summary>A number to a tenth, with its sign.</summary>
    public static string Signed(double value) => value.ToString("+0.0;\u22120.0;0.0", CultureInfo.InvariantCulture);

    /// <summary>A whole number with its sign.</summary>
    public static string Signed(int value) => value.ToString("+0;\u22120;0", CultureInfo.InvariantCulture);

    /// <summary>The estimator as a caption names it.</summary>
    public static string Estimator(KeeperCurve curve) => char.ToUpperInvariant(curve.Estimator[0]) + curve.Estimator[1..];

    /// <summary>A rate in percent, to a tenth where it needs one, with a space that does not break.</summary>
    public static string Percent(double rate) => (100 * rate).ToString("0.#", CultureInfo.InvariantCulture) + "\u00A0%";

    /// <summary>A rate in whole percent, as one reads it at arm's length; never rounded to certainty.</summary>
    public static string WholePercent(double rate) =>
        rate switch
        {
            > 0 and < 0.005 => "<1\u00A0%",
            > 0.995 and < 1 => ">99\u00A0%",
            _ => Percent(Math.Round(rate, 2)),
        };

    /// <summary>The nearest mark of the camera, or the time itself where no mark is within half a stop.</summary>
    public static string Speed(double log2Seconds, Marks marks) =>
        MarkedSpeeds.Told(ShutterSpeed.FromLog2Seconds(log2Seconds), marks).ToString().Replace(' ', '\u00A0');

    /// <summary>What was found on the target, as a sentence without a full stop.</summary>
    /// <param name="target">The target.</param>
    /// <param name="fastest">Fastest speed tested, log2 seconds.</param>
    /// <param name="slowest">Slowest speed tested, log2 seconds.</param>
    /// <param name="rateAtSlowest">Median rate there.</param>
    /// <param name="marks">The camera's marks.</param>
    public static string Finding(TargetExposure target, double fastest, double slowest, double rateAtSlowest, Marks marks)
    {
        var share = target.Rate == 0.5 ? "half" : Percent(target.Rate);
        var frames = target.Rate == 0.5 ? "half the frames" : $"{share} of frames";
        var words = target.Log2Seconds switch
        {
            { } x when x > slowest => $"{frames} are keepers at about {Speed(x, marks)}, slower than tested",
            { } x when x < fastest => $"{frames} are keepers at about {Speed(x, marks)}, faster than tested",
            { } x => $"{frames} are keepers at {Speed(x, marks)}",
            null when target.Pieces is [({ } from, { } to)] =>
                $"{frames} are keepers somewhere from {Unitless(Speed(from, marks))} to {Speed(to, marks)}",
            null when !target.IsReachable => $"probably no shutter speed makes {frames} keepers",
            null when rateAtSlowest > target.Rate => $"more than {share} are still keepers at {Speed(slowest, marks)}, the slowest tested",
            null => $"fewer than {share} are keepers even at {Speed(fastest, marks)}, the fastest tested",
        };
        return char.ToUpperInvariant(words[0]) + words[1..];
    }

    /// <summary>What was found where no falling curve was; null otherwise.</summary>
    public static string? WrongDirection(KeeperCurve curve) =>
        curve.Statuses.Any(s => s.Code == StatusCode.WrongDirection) ? "Slower speeds brought more keepers: check the table" : null;

    /// <summary>The exposures compatible with a rate: "1/20 s to 1/8 s", "1/8 s or faster".</summary>
    public static string Pieces(ImmutableArray<(double? Lower, double? Upper)> pieces, Marks marks) =>
        string.Join(
            ", or ",
            pieces.Select(p =>
                p switch
                {
                    ({ } lower, { } upper) => $"{Unitless(Speed(lower, marks))} to {Speed(upper, marks)}",
                    (null, { } upper) => $"{Speed(upper, marks)} or faster",
                    ({ } lower, null) => $"{Speed(lower, marks)} or slower",
                    _ => "any speed",
                }
            )
        );

    /// <summary>The label beside the target: the exposure and its interval, or why there is none.</summary>
    public static string Target(TargetExposure target, double level, Marks marks)
    {
        var rate = Percent(target.Rate);
        return target switch
        {
            { Log2Seconds: { } x } => $"{rate} at {Speed(x, marks)}\n{Percent(level)} interval: {Pieces(target.Pieces, marks)}",
            { Pieces: [_, ..] } => $"{rate}: no one speed\n{Percent(level)} interval: {Pieces(target.Pieces, marks)}",
            { IsReachable: false } => $"{rate}: probably not reachable at any speed",
            _ => $"{rate}: not within the speeds tested",
        };
    }

    /// <summary>What the picture shows, in sentences, beside its title and captions.</summary>
    public static string Aloud(CurveScene scene)
    {
        var counts = scene.Observed.Select(o => $"{Speed(o.Log2Seconds, scene.Marks)} {o.Keepers} of {o.Frames}");
        return $"Keeper rate against shutter speed. {Target(scene.Target, scene.Level, scene.Marks).Replace('\n', ';')}. Kept: {string.Join(", ", counts)}.";
    }

    /// <summary>Where the numbers come from: data, criterion, estimator, day, and what the reader should know.</summary>
    public static ImmutableArray<string> Captions(KeeperCurve curve, ExposureAnswer target, AnswerOptions options)
    {
        return
        [
            Data(curve),
            $"{Source(curve, options, "Curve for")}. Dots: keepers of frames, area by frames; bars: {Percent(curve.Model.Level)} Wilson intervals.",
            .. curve
                .Statuses.Concat(target.Statuses)
                .Where(s => Told.Contains(s.Code) || IsSeparation(curve, s))
                .Select(s => s.Message)
                .Distinct(),
        ];
    }

    /// <summary>Without labels, frames of one photographer are taken as one session.</summary>
    private static string Sessions(CurveData data) =>
        data.SessionLabels.IsEmpty && data.Sessions > 1
            ? $"by {Count(data.Sessions, "photographer")} in a session each"
            : $"in {Count(data.Sessions, "session")}";

    /// <summary>Counts and criterion, as sentences.</summary>
    public static string Data(KeeperCurve curve)
    {
        var data = curve.Data;
        var criterion = data.Criterion switch
        {
            null => "Criterion not recorded",
            { } c when c == Criterion.Print => "Judged on a print",
            { } c when c == Criterion.Pixel => "Judged at pixels",
            { } c => $"Criterion: {c.Name}",
        };
        var unjudged = data.Unjudged == 0 ? "" : $"; {Count(data.Unjudged, "frame")} not judged";
        return $"{data.Keepers} of {Count(data.Frames, "frame")} kept at {Count(data.Speeds.Length, "speed")} {Sessions(data)}. {criterion}{unjudged}.";
    }

    /// <summary>Day or conditions, estimator and priors or link, without a full stop: "Curve for another day: posterior, priors-1".</summary>
    public static string Source(KeeperCurve curve, AnswerOptions options, string what)
    {
        var model = curve.Model;
        var basis =
            curve.Linear is { } linear
                ? $"{Word(model.Link)} link, {(linear.Nodes is null ? "frames taken as independent" : "levels fitted together")}"
            : model.Priors == Priors.Default ? model.Priors.Version
            : $"{model.Priors.Version}, changed";
        var terms = curve.Under(options.Conditions);
        var day = curve.Linear is not null
            ? (terms.Length > 0 ? terms : "the frames tested")
            : (options.Day == Day.Another ? "another day" : "the day of the test") + (terms.Length > 0 ? $", {terms}" : "");
        return $"{what} {day}: {curve.Estimator}, {basis}";
    }

    /// <summary>A speed without its unit, where the unit follows or is named elsewhere.</summary>
    public static string Unitless(string speed) => speed.TrimEnd('s').TrimEnd(' ', '\u00A0');

    private static bool IsSeparation(KeeperCurve curve, Status status) =>
        curve.Linear is not null && (status.Code is StatusCode.Separated or StatusCode.QuasiSeparated);

    private static string Word(Link link) =>
        link switch
        {
            Link.Probit => "probit",
            Link.Cloglog => "complementary log-log",
            _ => "logit",
        };

    /// <summary>1 frame, 3 frames, with a space that does not break.</summary>
    public static string Count(int number, string what) => $"{Number(number)}\u00A0{what}{(number == 1 ? "" : "s")}";

    /// <summary>A whole number in digits.</summary>
    public static string Number(int number) => number.ToString(CultureInfo.InvariantCulture);
}
