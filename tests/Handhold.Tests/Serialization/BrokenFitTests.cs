using FsCheck.Xunit;

namespace Handhold.Tests.Serialization;

public class BrokenFitTests
{
    [Theory]
    [InlineData("")]
    [InlineData("null")]
    [InlineData("[]")]
    [InlineData("{}")]
    [InlineData("{\"schemaVersion\": 1")]
    [InlineData("{\"schemaVersion\": 1, \"schemaVersion\": 1}")]
    [InlineData("exposure,frames,keepers")]
    public void What_is_no_fit_is_refused(string text) => Assert.Throws<SavedFitException>(() => SavedFit.Read(text));

    [Theory]
    [InlineData("\"frames\": 18", "\"frames\": 19", "curves[0].data.frames")]
    [InlineData("\"cells\": 3", "\"cells\": 2000000000", "curves[0].data.cells")]
    [InlineData("\"rows\": 3", "\"rows\": 2", "curves[0].data.rows")]
    [InlineData("\"keepers\": 5", "\"keepers\": 7", "curves[0].cells[0]")]
    [InlineData("\"keepers\": 5", "\"keepers\": -5", "curves[0].cells[0].keepers")]
    [InlineData("\"keepers\": 5", "\"keepers\": \"5\"", "curves[0].cells[0].keepers")]
    [InlineData("\"keepers\": 5", "\"keepers\": 4.5", "curves[0].cells[0].keepers")]
    [InlineData("\"exposure_s\": 0.0166", "\"exposure_s\": -0.0166", "curves[0].cells[0].exposure_s")]
    [InlineData("\"exposure_s\": 0.0166", "\"exposure_s\": 1e999, \"was\": 0.0166", "curves[0].cells[0].exposure_s")]
    [InlineData("\"luck\": \"none\"", "\"luck\": \"bad\"", "luck")]
    [InlineData("\"luck\": \"none\"", "\"luck\": \"\\ud800\"", "luck")]
    [InlineData("\"estimator\": \"posterior\"", "\"estimator\": \"likelihood\"", "estimator")]
    [InlineData("\"level\": 0.95", "\"level\": 1", "level")]
    [InlineData("\"ceiling\": 1,", "\"ceiling\": 1.5,", "ceiling")]
    [InlineData("\"ceiling\": 1,", "\"ceiling\": \"high\",", "ceiling")]
    [InlineData("\"logSd\": 0.35", "\"logSd\": 0", "priors.b.logSd")]
    [InlineData("\"family\": \"beta\"", "\"family\": \"gamma\"", "priors.ceilingLoss.family")]
    [InlineData("\"each\": [", "\"each\": [ 3,", "each[0]")]
    public void What_contradicts_itself_is_refused_with_its_place(string was, string now, string place)
    {
        var at = SavedFits.QuickText.LastIndexOf(was, StringComparison.Ordinal);
        if (place.StartsWith("priors", StringComparison.Ordinal) || !place.StartsWith("curves", StringComparison.Ordinal))
            at = SavedFits.QuickText.IndexOf(was, StringComparison.Ordinal);
        var text = SavedFits.QuickText[..at] + now + SavedFits.QuickText[(at + was.Length)..];
        Assert.Contains(place, Assert.Throws<SavedFitException>(() => SavedFit.Read(text)).Message, StringComparison.Ordinal);
    }

    [Fact]
    public void A_version_to_come_is_refused_naming_both()
    {
        var text = SavedFits.QuickText.Replace("\"schemaVersion\": 1", "\"schemaVersion\": 2", StringComparison.Ordinal);
        var message = Assert.Throws<SavedFitException>(() => SavedFit.Read(text)).Message;
        Assert.Contains("version 2", message, StringComparison.Ordinal);
        Assert.Contains("version 1", message, StringComparison.Ordinal);
    }

    [Fact]
    public void Nesting_without_end_is_refused() =>
        Assert.Throws<SavedFitException>(() => SavedFit.Read(new string('[', 100_000) + new string(']', 100_000)));

    [Fact]
    public void A_text_beyond_the_limit_is_refused_before_it_is_parsed() =>
        Assert.Contains(
            "16777216",
            Assert.Throws<SavedFitException>(() => SavedFit.Read(new string(' ', SavedFit.LargestText + 1))).Message,
            StringComparison.Ordinal
        );

    [Property(MaxTest = 300, Replay = "(20250131,9)")]
    public void Any_damage_ends_in_a_fit_or_in_a_sentence(ushort place, byte length, string patch)
    {
        var text = SavedFits.QuickText;
        var from = place % text.Length;
        var damaged = text[..from] + patch + text[Math.Min(text.Length, from + length % 9)..];
        try
        {
            Assert.NotEmpty(SavedFit.Read(damaged));
        }
        catch (SavedFitException refused)
        {
            Assert.EndsWith(".", refused.Message, StringComparison.Ordinal);
        }
    }
}
