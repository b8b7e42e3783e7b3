namespace Handhold.Tests.Estimators;

/// <summary>The published tables as judged frames, fitted without a posterior.</summary>
internal static class PublishedTables
{
    internal static KeeperModel Likelihood { get; } = KeeperModel.Default with { Estimator = Estimator.Likelihood };

    internal static KeeperModel BiasReduced { get; } = KeeperModel.Default with { Estimator = Estimator.BiasReduced };

    internal static KeeperModel WithSex(this KeeperModel model) => model with { Terms = ["sex"] };

    internal static KeeperModel WithSexAndItsSlope(this KeeperModel model) => model.WithSex() with { Products = [new("exposure", "sex")] };

    internal static Conditions Females { get; } = Conditions.None.With("sex", "F");

    internal static Conditions Males { get; } = Conditions.None.With("sex", "M");

    internal static FrameTable Table(string caseName, string file) =>
        [
            .. GoldenFolder
                .Rows(caseName, file)
                .Select(row => new FrameCell(
                    ShutterSpeed.FromSeconds(row.Number("exposure_s")),
                    (int)row.Number("frames"),
                    (int)row.Number("keepers")
                )
                {
                    Conditions = row.Where(r => r.Key is not ("exposure_s" or "frames" or "keepers"))
                        .Aggregate(Conditions.None, (conditions, r) => conditions.With(r.Key, r.Value)),
                }),
        ];
}
