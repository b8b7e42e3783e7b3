using static Handhold.ShutterSpeed;

namespace Handhold.Tests.Fitting;

public class RejectsDeletedFacts
{
    [Theory]
    [InlineData(Estimator.Posterior)]
    [InlineData(Estimator.BiasReduced)]
    [InlineData(Estimator.Likelihood)]
    public void A_curve_says_that_rejects_were_deleted_and_a_saved_one_still_does(Estimator estimator)
    {
        var fitted = Model(estimator).Fit(Table("likely"));
        var said = Said(fitted.Only);
        Assert.Contains("6 frames of 18 judged come", said, StringComparison.Ordinal);
        Assert.Contains("2 frames not judged are missing", said, StringComparison.Ordinal);
        Assert.Equal(said, Said(SavedFit.Read(SavedFit.Write(fitted)).Only));
    }

    [Theory]
    [InlineData("no")]
    [InlineData("No")]
    public void A_curve_whose_rows_deny_it_does_not(string denied) =>
        Assert.Null(Said(Model(Estimator.BiasReduced).Fit(Table(denied)).Only));

    private static KeeperModel Model(Estimator estimator) => KeeperModel.Default with { Estimator = estimator, Ceiling = Ceiling.One };

    private static string? Said(KeeperCurve curve) => curve.Statuses.SingleOrDefault(s => s.Code == StatusCode.FramesDeleted)?.Message;

    private static FrameTable Table(string deleted) =>
        [
            new(OneOver(60), 6, 6) { Conditions = Conditions.None.With("rejects_deleted", deleted) },
            new(OneOver(30), 6, 4),
            new(OneOver(15), 6, 1),
            new(OneOver(15), 0, 0) { Unjudged = 2, Conditions = Conditions.None.With("rejects_deleted", deleted) },
        ];
}
