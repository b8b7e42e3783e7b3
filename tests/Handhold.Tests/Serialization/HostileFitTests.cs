using System.Diagnostics;
using System.Globalization;
using Handhold.Randomness;
using static Handhold.ShutterSpeed;

namespace Handhold.Tests.Serialization;

/// <summary>Saved fits that nobody would write by hand. <c>HANDHOLD_HOSTILE_FITS=100000</c> tries as many as that.</summary>
public class HostileFitTests
{
    private const long MostBytes = 400_000_000;

    public static TheoryData<string> Kinds => ["posterior", "likelihood", "not judged"];

    private static string Text(string kind) =>
        kind switch
        {
            "posterior" => SavedFits.QuickText,
            "likelihood" => SavedFit.Write(
                new KeeperModel
                {
                    Estimator = Estimator.Likelihood,
                    Terms = ["setup"],
                    Products = [new("exposure", "setup")],
                }.Fit([
                    .. from setup in "ab"
                    from i in Enumerable.Range(0, 4)
                    select new FrameCell(OneOver(60 >> i), 6, setup == 'a' ? 5 - i : 4 - i)
                    {
                        Conditions = Conditions.None with { Setup = $"{setup}" },
                    },
                ])
            ),
            _ => SavedFit.Write(
                SavedFits.QuickModel.Fit([
                    new(OneOver(60), 6, 5) { Conditions = Conditions.None with { Session = "mon", FocalLength = 50, Crop = 1.5 } },
                    new(OneOver(15), 6, 1)
                    {
                        Unjudged = 2,
                        Conditions = Conditions.None with { Session = "tue", FocalLength = 50, Crop = 1.5 },
                    },
                ])
            ),
        };

    [Theory, MemberData(nameof(Kinds))]
    public void A_damaged_fit_is_fitted_or_refused_in_a_sentence_within_bounds_of_memory(string kind)
    {
        var (text, seed) = (Text(kind), Seed.From(20261126));
        var tries = int.Parse(Environment.GetEnvironmentVariable("HANDHOLD_HOSTILE_FITS") ?? "400", CultureInfo.InvariantCulture);
        var fitted = 0;
        for (var i = 0; i < tries; i++)
        {
            var damaged = HostileFit.Of(text, seed.Stream(i));
            var (before, watch) = (GC.GetTotalAllocatedBytes(), Stopwatch.StartNew());
            try
            {
                Assert.NotEmpty(SavedFit.Read(damaged));
                fitted++;
            }
            catch (SavedFitException refused)
            {
                Assert.True(refused.Message.EndsWith('.') && refused.Message.Length < 40_000, $"try {i}: {refused.Message}");
            }
            catch (Exception other) when (other is not Xunit.Sdk.IAssertionException)
            {
                Assert.Fail($"try {i}: {other.GetType().Name}: {other.Message}\n{damaged}");
            }

            var bytes = GC.GetTotalAllocatedBytes() - before;
            Assert.True(bytes < MostBytes && watch.Elapsed.TotalSeconds < 20, $"try {i}: {bytes} bytes, {watch.Elapsed}\n{damaged}");
        }

        Assert.InRange(fitted, tries / 20, tries / 2);
    }

    [Fact]
    public void Counts_that_no_machine_can_add_up_are_refused()
    {
        var cells = SavedFits
            .QuickText.Replace("\"frames\": 6", "\"frames\": 2147483647", StringComparison.Ordinal)
            .Replace("\"frames\": 18", "\"frames\": 2147483647", StringComparison.Ordinal);
        Assert.Throws<SavedFitException>(() => SavedFit.Read(cells));
    }

    [Theory]
    [InlineData("\"median\": 1.6", "\"median\": 1e300")]
    [InlineData("\"logSd\": 0.35", "\"logSd\": 1e300")]
    [InlineData("\"logSd\": 0.35", "\"logSd\": 1e-300")]
    [InlineData("\"sd\": 3", "\"sd\": 1e300")]
    [InlineData("\"sd\": 3", "\"sd\": 1e-300")]
    public void Priors_that_no_grid_resolves_are_refused(string was, string now)
    {
        var text = SavedFits.QuickText;
        Assert.Contains(was, text, StringComparison.Ordinal);
        Assert.Throws<SavedFitException>(() => SavedFit.Read(text.Replace(was, now, StringComparison.Ordinal)));
    }
}
