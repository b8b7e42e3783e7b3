using Handhold.Kernels;

namespace Handhold.Models;

/// <summary>The prior of a curve's half point at its own focal length, stabiliser, magnification and subject.</summary>
internal static class PriorAnchor
{
    private const int Points = 61;
    private const double Reach = 6;

    /// <summary>Mean and sd of tau (log2 seconds) at these conditions; a normal with these moments is the prior.</summary>
    internal static NormalPrior For(Conditions conditions, AnchorPriors priors)
    {
        var rotation = Rotation(conditions, priors);
        if (conditions.EffectiveMagnification is not { } magnification || magnification == 0)
            return Shifted(rotation, conditions, priors);
        var blur = Criterion.PermittedBlur(conditions.Criterion, conditions.Crop, conditions.PixelPitch) / 1000; // mm
        var hand = new NormalPrior(
            Math.Log2(blur / (magnification * priors.HandSpeed.Median)),
            priors.HandSpeed.LogStandardDeviation / Math.Log(2)
        );
        var subject = conditions.SubjectSpeed is { } speed && speed > 0 ? Math.Log2(blur / (magnification * speed)) : (double?)null;
        return Shifted(Quadrature(rotation, hand, subject), conditions, priors);
    }

    private static NormalPrior Rotation(Conditions conditions, AnchorPriors priors)
    {
        var tau0 = priors.NoFocalLength;
        var (mean, variance) = (tau0.Mean, tau0.StandardDeviation * tau0.StandardDeviation);
        if (conditions.EffectiveEquivalentFocalLength is { } focal)
        {
            tau0 = conditions.Criterion?.Name switch
            {
                "print" => priors.Print,
                "pixel" => priors.Pixel,
                _ => priors.OtherCriterion,
            };
            (mean, variance) = (tau0.Mean, tau0.StandardDeviation * tau0.StandardDeviation);
            Add(priors.FocalLength, -Math.Log2(focal / 50));
        }

        if (conditions.EffectiveMagnification is { } magnification)
            Add(priors.Magnification, -Math.Log2(1 + magnification));
        if (conditions.EffectiveStabiliserStops is { } stops)
            Add(priors.RatedStop, stops);
        else if (conditions.StabiliserMode is not (null or "off"))
            Add(priors.UnratedStabiliser, 1);
        return new(mean, Math.Sqrt(variance));

        void Add(NormalPrior coefficient, double times)
        {
            mean += coefficient.Mean * times;
            variance += coefficient.StandardDeviation * times * (coefficient.StandardDeviation * times);
        }
    }

    private static NormalPrior Shifted(NormalPrior prior, Conditions conditions, AnchorPriors priors)
    {
        if (conditions.SubjectSpeed is not null && conditions.EffectiveMagnification is not null)
            return prior; // the speed itself is in the quadrature sum
        var shift = conditions.SubjectMotion switch
        {
            "slight" => priors.SlightMotion,
            "brisk" => priors.BriskMotion,
            _ => null,
        };
        return shift is null
            ? prior
            : new(
                prior.Mean + shift.Mean,
                Math.Sqrt(prior.StandardDeviation * prior.StandardDeviation + shift.StandardDeviation * shift.StandardDeviation)
            );
    }

    /// <summary>Moments of -1/2 log2(2^(-2A) + 2^(-2B) [+ 2^(-2C)]) for independent normal A and B, by the trapezoid rule in both.</summary>
    private static NormalPrior Quadrature(NormalPrior a, NormalPrior b, double? c)
    {
        var (mass, first, second) = (0.0, 0.0, 0.0);
        for (var i = 0; i < Points; i++)
        {
            var za = Reach * (2.0 * i / (Points - 1) - 1);
            for (var k = 0; k < Points; k++)
            {
                var zb = Reach * (2.0 * k / (Points - 1) - 1);
                var sum =
                    Math.Pow(2, -2 * (a.Mean + a.StandardDeviation * za))
                    + Math.Pow(2, -2 * (b.Mean + b.StandardDeviation * zb))
                    + (c is { } subject ? Math.Pow(2, -2 * subject) : 0);
                var tau = -0.5 * Math.Log2(sum);
                var weight = Normal.Density(za) * Normal.Density(zb);
                mass += weight;
                first += weight * tau;
                second += weight * tau * tau;
            }
        }

        var mean = first / mass;
        return new(mean, Math.Sqrt(second / mass - mean * mean));
    }
}
