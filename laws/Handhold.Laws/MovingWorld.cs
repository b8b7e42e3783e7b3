using Handhold.Randomness;
using Handhold.Simulation;

namespace Handhold.Laws;

/// <summary>A photographer drawn from the default priors, and what lens, stabiliser, magnification and subject do to the half point, written afresh from the model's page.</summary>
/// <param name="Usual">The curve at 50 mm, stabiliser off, far and still.</param>
/// <param name="Focal">Stops lost per doubling of the focal length.</param>
/// <param name="Close">Stops lost per doubling of 1 + magnification.</param>
/// <param name="RatedStop">Stops gained per rated stop of the stabiliser.</param>
/// <param name="HandSpeed">Speed of the hands, mm/s.</param>
/// <param name="Slight">Stops lost, as a shift, to slight motion.</param>
/// <param name="Brisk">To brisk motion.</param>
internal sealed record MovingWorld(World Usual, double Focal, double Close, double RatedStop, double HandSpeed, double Slight, double Brisk)
{
    private const double PrintBlur = 0.03; // mm

    internal static MovingWorld Draw(RandomStream stream)
    {
        var anchor = Priors.Default.Anchor;
        return new(
            World.Draw(KeeperModel.Default, anchor.Print, stream),
            Normal(anchor.FocalLength),
            Normal(anchor.Magnification),
            Normal(anchor.RatedStop),
            anchor.HandSpeed.Median * Math.Exp(anchor.HandSpeed.LogStandardDeviation * stream.Normal()),
            Normal(anchor.SlightMotion),
            Normal(anchor.BriskMotion)
        );

        double Normal(NormalPrior prior) => prior.Mean + prior.StandardDeviation * stream.Normal();
    }

    /// <summary>Half point, log2 seconds: blurs of rotation and translation add in quadrature; motion of the subject without a speed is a shift.</summary>
    internal double HalfPoint(Conditions conditions)
    {
        var (magnification, stops) = (conditions.Magnification ?? 0, conditions.StabiliserStops ?? 0);
        var rotation =
            Usual.HalfPoint
            - Focal * Math.Log2(conditions.EquivalentFocalLength!.Value / 50)
            - Close * Math.Log2(1 + magnification)
            + RatedStop * stops;
        var shift =
            conditions.SubjectMotion == "slight" ? Slight
            : conditions.SubjectMotion == "brisk" ? Brisk
            : 0;
        var translation = magnification * HandSpeed / PrintBlur; // blurs as much in one second as is permitted so many times
        return -Math.Log2(double.Hypot(Math.Pow(2, -rotation), translation)) + shift;
    }

    /// <summary>All settings on one day, in bursts of their own.</summary>
    internal FrameTable Shoot(IEnumerable<Conditions> settings, ShootPlan plan, RandomStream stream)
    {
        var day = Usual.SessionLuck * stream.Normal();
        return
        [
            .. settings.SelectMany(
                (setting, i) =>
                    (Usual with { HalfPoint = HalfPoint(setting) })
                        .ShootDay(plan with { Conditions = setting }, "1", day, stream)
                        .Select(row => row with { Conditions = row.Conditions with { Burst = $"{i}, {row.Conditions.Burst}" } })
            ),
        ];
    }
}
