using System.Globalization;

namespace Handhold.Plots;

/// <summary>Everything a picture of prior against posterior shows; log2 seconds and stops.</summary>
internal sealed record PriorScene(
    PictureWords Words,
    (double Mean, double Deviation) Prior,
    (double Mean, double Deviation) Posterior,
    Palette Palette,
    Marks Marks
)
{
    public static PriorScene Of(KeeperCurve curve, NormalPrior prior, ParameterSummary posterior, PictureOptions options)
    {
        var marks = options.Answers.Marks;
        string Said(double mean, double deviation) =>
            $"{CurveWords.Speed(mean, marks)}, give or take {deviation.ToString("0.0", CultureInfo.InvariantCulture)} stops";
        var (before, after) = (Said(prior.Mean, prior.StandardDeviation), Said(posterior.Mean, posterior.StandardDeviation));
        return new PriorScene(
            new PictureWords(
                options.Title ?? $"The frames put the half point at {after}; before them it was {before}",
                PictureWords.Name(curve),
                [
                    CurveWords.Data(curve),
                    $"Half point of the curve without ceiling: mean, thick one and thin two standard deviations. {CurveWords.Estimator(curve)}, {curve.Model.Priors.Version}.",
                ],
                $"Half point, prior: {before}. Posterior: {after}."
            ),
            (prior.Mean, prior.StandardDeviation),
            (posterior.Mean, posterior.StandardDeviation),
            Palette.Of(options.Theme),
            marks
        );
    }
}
