namespace Handhold;

/// <summary>The questions that a keeper curve answers.</summary>
public static class PredictionExtensions
{
    /// <summary>Keeper rate at a speed.</summary>
    public static RateAnswer RateAt(this KeeperCurve curve, ShutterSpeed at, AnswerOptions? options = null) =>
        throw new NotSupportedException();

    /// <summary>Exposure at which half the frames are keepers.</summary>
    public static ExposureAnswer HalfKeeperExposure(this KeeperCurve curve, AnswerOptions? options = null) =>
        curve.ExposureFor(0.5, options);

    /// <summary>Exposure that has a keeper rate.</summary>
    public static ExposureAnswer ExposureFor(this KeeperCurve curve, double rate, AnswerOptions? options = null) =>
        throw new NotSupportedException();

    /// <summary>Slowest marked speed whose keeper rate is at least <paramref name="rate"/> with probability <paramref name="assurance"/>.</summary>
    public static SlowestAnswer Slowest(this KeeperCurve curve, double rate, double assurance, AnswerOptions? options = null) =>
        throw new NotSupportedException();

    /// <summary>Slowest marked speed at which <paramref name="frames"/> frames bring at least <paramref name="keepers"/> keepers with probability <paramref name="assurance"/>.</summary>
    public static SlowestAnswer SlowestFor(
        this KeeperCurve curve,
        int frames,
        int keepers,
        double assurance,
        AnswerOptions? options = null
    ) => throw new NotSupportedException();

    /// <summary>Smallest number of frames that brings at least <paramref name="keepers"/> keepers with probability <paramref name="assurance"/>.</summary>
    public static FramesNeededAnswer FramesNeeded(
        this KeeperCurve curve,
        ShutterSpeed at,
        int keepers,
        double assurance,
        AnswerOptions? options = null
    ) => throw new NotSupportedException();

    /// <summary>How many keepers <paramref name="frames"/> frames will bring.</summary>
    public static KeeperCountAnswer KeepersToExpect(this KeeperCurve curve, ShutterSpeed at, int frames, AnswerOptions? options = null) =>
        throw new NotSupportedException();

    /// <summary>How many stops slower this curve allows than <paramref name="reference"/> at a keeper rate.</summary>
    public static StopsDifference SlowerThan(this KeeperCurve curve, KeeperCurve reference, double rate, AnswerOptions? options = null) =>
        throw new NotSupportedException();

    /// <summary>The rate along exposures from <paramref name="fastest"/> to <paramref name="slowest"/>.</summary>
    public static CurveBand Band(
        this KeeperCurve curve,
        ShutterSpeed fastest,
        ShutterSpeed slowest,
        int points = 161,
        AnswerOptions? options = null
    ) => throw new NotSupportedException();
}
