using System.Collections.Immutable;
using Handhold.Prediction;

namespace Handhold;

/// <summary>The exposure that has a wanted keeper rate.</summary>
public sealed class ExposureAnswer : Answer
{
    internal ExposureAnswer(
        Question question,
        double rate,
        ShutterSpeed? exposure,
        ExposureSet set,
        bool withinTested,
        ImmutableArray<Status> statuses
    )
        : base(question, withinTested, exposure is not null, statuses) => (Rate, Exposure, Set) = (rate, exposure, set);

    /// <summary>The wanted rate.</summary>
    public double Rate { get; }

    /// <summary>Median exposure, unrounded; null when not reachable.</summary>
    public ShutterSpeed? Exposure { get; }

    /// <summary>The exposures compatible with it.</summary>
    public ExposureSet Set { get; }

    /// <inheritdoc />
    public override string Sentence =>
        Exposure is { } exposure
            ? $"{(Rate == 0.5 ? "Half" : Say.Percent(Rate))} of the frames are keepers at {Near(exposure.Log2Seconds)} ({Say.Percent(Curve.Model.Level)} interval {Ends()})."
        : Set.Pieces.IsEmpty || Curve.Linear is null ? Statuses[0].Message
        : $"{Statuses[0].Message} The {Say.Percent(Curve.Model.Level)} interval for {(Rate == 0.5 ? "half of the frames" : Say.Percent(Rate))}: {Ends()}.";

    private static string Near(double log2Seconds) => MarkedSpeeds.Told(ShutterSpeed.FromLog2Seconds(log2Seconds), Marks.Third).ToString();

    private string Ends() =>
        string.Join(
            ", or ",
            Set.Pieces.Select(piece =>
                (piece.Lower, piece.Upper) switch
                {
                    ({ } low, { } high) => $"{Near(low)} to {Near(high)}",
                    (null, { } high) => $"up to {Near(high)}",
                    ({ } low, null) => $"from {Near(low)} on",
                    _ => "any exposure",
                }
            )
        );
}
