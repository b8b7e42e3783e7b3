namespace Handhold.Tests.Serialization;

/// <summary>Files that earlier states of the format wrote: they load for ever.</summary>
public class SavedFitsOfOldTests
{
    private const string Case = "saved-fits";

    public static TheoryData<string> Files =>
        [
            .. Directory
                .EnumerateFiles(GoldenFolder.PathOf(Case, ""), "1-*.json")
                .Select(f => Path.GetFileName(f)!)
                .Order(StringComparer.Ordinal),
        ];

    [Theory, MemberData(nameof(Files))]
    public void A_file_of_old_is_read_asked_and_written_again(string file)
    {
        var fit = SavedFit.Read(File.ReadAllText(GoldenFolder.PathOf(Case, file)));
        Assert.Equal((32, 18, 3), (fit.Sum(c => c.Data.Frames), fit.Sum(c => c.Data.Keepers), fit.Sum(c => c.Data.Unjudged)));
        foreach (var curve in fit)
        {
            var half = curve
                .HalfKeeperExposure(
                    new()
                    {
                        BeyondTested = true,
                        Conditions = curve.ReferenceConditions,
                        CheckPriors = false,
                    }
                )
                .Exposure!.Value;
            Assert.InRange(half.Seconds, 1 / 125.0, 0.25);
        }

        var again = SavedFit.Read(SavedFit.Write(fit));
        Assert.Equal(fit.Select(c => c.LogLikelihood), again.Select(c => c.LogLikelihood));
    }

    [Fact]
    public void There_are_files_of_every_state_of_the_format() => Assert.True(Files.Count >= 6);
}
