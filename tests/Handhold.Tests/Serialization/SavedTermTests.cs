namespace Handhold.Tests.Serialization;

public class SavedTermTests
{
    private static readonly string[] Grips = ["free", "braced"];

    private static FrameTable Table =>
        [
            .. from grip in Grips
            from setup in new[] { "long", "wide" }
            from stop in Enumerable.Range(0, 5)
            select new FrameCell(ShutterSpeed.FromLog2Seconds(stop - 8), 6, Math.Clamp(7 - 2 * stop + (grip == "braced" ? 2 : 0), 0, 6))
            {
                Conditions = Conditions.None.With("grip", grip) with
                {
                    Setup = setup,
                    Session = "monday",
                    Burst = $"{setup} {grip} {stop}",
                },
            },
        ];

    [Theory]
    [InlineData(Estimator.Posterior, false)]
    [InlineData(Estimator.Posterior, true)]
    [InlineData(Estimator.BiasReduced, true)]
    [InlineData(Estimator.Likelihood, true)]
    public void A_fit_with_terms_read_back_answers_to_the_last_bit(Estimator estimator, bool steepens)
    {
        var model = KeeperModel.Default with
        {
            Estimator = estimator,
            Terms = ["grip"],
            Products = steepens ? [new("exposure", "grip")] : [],
        };
        var fit = model.Fit(Table);
        var read = SavedFit.Read(SavedFit.Write(fit), cancellation: TestContext.Current.CancellationToken);
        Assert.Equal(fit.Select(c => c.Key.ToString()), read.Select(c => c.Key.ToString()));
        Assert.Equal(TermNumbers.Of(fit), TermNumbers.Of(read));
    }
}
