using System.Collections.Immutable;

namespace Handhold.Laws;

/// <summary>Worlds in, tests shot and judged, curves fitted, plans handed out, and with what chance each is kept.</summary>
/// <param name="Family">Where the worlds come from.</param>
/// <param name="Design">How each world is tested.</param>
/// <param name="Estimator">How curves are fitted.</param>
internal sealed record Experiment(WorldFamily Family, TestDesign Design, Estimator Estimator)
{
    internal const string Chosen = "chosen from data";
    internal const string Fixed = "fixed";

    /// <summary>Speeds that no datum had a say in; worlds take turns.</summary>
    private static readonly ImmutableArray<SpeedRule> FixedSpeeds =
    [
        .. new[] { 80, 40, 20 }.Select(d => new SpeedRule(Fixed, _ => ShutterSpeed.OneOver(d))),
    ];

    internal static readonly ImmutableArray<Experiment> All =
    [
        .. WorldFamily.All.Select(f => new Experiment(f, TestDesign.TwoBurstsOfThree, Estimator.Posterior)),
        new(WorldFamily.Priors, TestDesign.SixFramesHeldAfresh, Estimator.Posterior),
        new(WorldFamily.Priors, TestDesign.TwoBurstsOfThree, Estimator.BiasReduced),
    ];

    internal string Title =>
        $"Worlds {Family.Name}; {(Estimator == Estimator.Posterior ? "posterior" : "bias-reduced")}; tested in {Design.Name}";

    internal IReadOnlyList<IReadOnlyList<Outcome>> Run(int worlds, int threads) => PlansKept.Run(Design, 0, worlds, threads, Plans, Family);

    private IReadOnlyList<Plan> Plans(int world, FrameTable table)
    {
        var curve = (TestDesign.Model with { Estimator = Estimator }).Fit(table).Only;
        var chosen = Planning.Plans(curve, table, Planning.Rules[world % Planning.Rules.Length] with { Name = Chosen }, Planning.Usual);
        return [.. chosen, .. Planning.Plans(curve, table, FixedSpeeds[world % FixedSpeeds.Length], Planning.Usual)];
    }
}
