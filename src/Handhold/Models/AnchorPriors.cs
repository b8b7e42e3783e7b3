namespace Handhold;

/// <summary>What places the half point of a curve before its data: from the focal length, stabiliser, magnification and subject at hand.</summary>
/// <remarks>
/// tau_rot = tau0 - f log2(focal / 50 mm) - m log2(1 + magnification) + e (rated stops);
/// tau_trans = log2(c / (magnification x hand speed)); tau_subj = log2(c / (magnification x subject speed)), c the permitted blur;
/// independent motions add in quadrature: tau = -1/2 log2(2^(-2 tau_rot) + 2^(-2 tau_trans) + 2^(-2 tau_subj)).
/// The numbers are judgement: see the methods page on priors.
/// </remarks>
public sealed record AnchorPriors
{
    /// <summary>tau0 at 50 mm equivalent, unstabilised, far and still, judged on a print.</summary>
    public NormalPrior Print { get; init; } = new(-Math.Log2(50) + 0.3, 2);

    /// <summary>tau0 judged at pixels.</summary>
    public NormalPrior Pixel { get; init; } = new(-Math.Log2(50) - 2, 2);

    /// <summary>tau0 with another or no criterion recorded.</summary>
    public NormalPrior OtherCriterion { get; init; } = new(-Math.Log2(50) - 0.85, 2.5);

    /// <summary>tau0 with no focal length recorded, whatever the criterion.</summary>
    public NormalPrior NoFocalLength { get; init; } = new(-6, 3);

    /// <summary>Stops lost for each doubling of the focal length.</summary>
    public NormalPrior FocalLength { get; init; } = new(1.1, 0.25);

    /// <summary>Stops lost for each doubling of 1 + magnification, by rotation.</summary>
    public NormalPrior Magnification { get; init; } = new(1.5, 0.5);

    /// <summary>Stops gained for each rated stop of the stabiliser in use.</summary>
    public NormalPrior RatedStop { get; init; } = new(0.6, 0.3);

    /// <summary>Stops gained by a stabiliser whose rating is not recorded.</summary>
    public NormalPrior UnratedStabiliser { get; init; } = new(2, 1.5);

    /// <summary>Speed of the hands across the subject, mm/s.</summary>
    public LogNormalPrior HandSpeed { get; init; } = new(3, 0.6);

    /// <summary>Stops lost to a subject called <c>slight</c>, as a shift of the half point.</summary>
    public NormalPrior SlightMotion { get; init; } = new(-0.7, 0.7);

    /// <summary>Stops lost to a subject called <c>brisk</c>, as a shift of the half point.</summary>
    public NormalPrior BriskMotion { get; init; } = new(-2, 1);
}
