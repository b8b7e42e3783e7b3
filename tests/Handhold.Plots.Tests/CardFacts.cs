using System.Buffers.Binary;
using System.Globalization;
using System.Text;
using System.Text.RegularExpressions;
using System.Xml.Linq;
using static Handhold.ShutterSpeed;

namespace Handhold.Plots.Tests;

public sealed class CardFacts : IDisposable
{
    private static readonly FieldCardOptions Quick = FieldCardOptions.Default with
    {
        Answers = AnswerOptions.Default with { CheckPriors = false, Budget = 20 },
    };

    private static readonly Lazy<KeeperCurve> s_curve = new(() => Fitted("Robin"));

    private readonly string _folder = Directory.CreateTempSubdirectory().FullName;

    public void Dispose() => Directory.Delete(_folder, recursive: true);

    [Fact]
    public void A_card_says_what_the_curve_answers()
    {
        var curve = Curve();
        var face = FieldCard.Of(curve, Quick, TestContext.Current.CancellationToken).Face;
        Assert.Equal(["1/60 s", "1/30 s", "1/15 s", "1/8 s", "1/4 s"], face.Rows.Select(r => r.Speed));
        Assert.Equal(curve.RateAt(OneOver(15), Quick.Answers).Rate!.Median, face.Rows[2].Rate!.Median);
        foreach (var (i, assurance) in CardFace.Assurances.Index())
        {
            var frames = curve.FramesNeeded(OneOver(15), 1, assurance, Quick.Answers, TestContext.Current.CancellationToken).Frames;
            Assert.Equal(frames?.ToString(CultureInfo.InvariantCulture) ?? "–", face.Rows[2].Frames[i]);
        }

        Assert.Equal(
            $"Trust {curve.Slowest(0.8, 0.9, Quick.Answers).Shutter}".Replace("/60 s", "/60\u00a0s", StringComparison.Ordinal),
            face.Trust.Head
        );
        Assert.StartsWith("From 1/8\u00a0s on: use a support.", face.Support, StringComparison.Ordinal);
        Assert.Equal(
            "14 of 24\u00a0frames kept at 4\u00a0speeds in 2\u00a0sessions. Judged on a print. Shot 2026-11-20 to 2026-11-22.",
            face.Notes[1]
        );
    }

    [Fact]
    public void Frames_beyond_the_budget_are_not_asked_for_at_more_assurance()
    {
        var face = FieldCard.Of(Curve(), Quick, TestContext.Current.CancellationToken).Face;
        Assert.Equal(["–", "–", "–"], face.Rows[^1].Frames);
        Assert.Contains("– more than 20\u00a0frames.", face.Notes[0], StringComparison.Ordinal);
    }

    [Fact]
    public void A_date_in_the_owners_words_is_taken_and_none_is_invented()
    {
        var plain = KeeperModel.Default.Fit([new(OneOver(30), 6, 3)], cancellation: TestContext.Current.CancellationToken).Only;
        Assert.EndsWith("Date not recorded.", Note(plain, Quick), StringComparison.Ordinal);
        Assert.EndsWith("Shot in spring.", Note(plain, Quick with { Date = "in spring" }), StringComparison.Ordinal);
    }

    [Fact]
    public void A_page_is_well_formed_takes_labels_as_text_and_says_all_that_the_card_says()
    {
        var card = Card("<b>Robin & \"son\"</b>");
        var html = FieldCard.Html([card, card], CardPaper.A4);
        Assert.Equal(html, FieldCard.Html([card, card], CardPaper.A4));
        Assert.DoesNotContain("<b>", html, StringComparison.Ordinal);
        Assert.DoesNotContain("http", html, StringComparison.Ordinal);
        var body = html[html.IndexOf("<body>", StringComparison.Ordinal)..].Replace("</html>", "", StringComparison.Ordinal);
        var articles = XElement.Parse(body).Elements("article").ToArray();
        Assert.Equal(2, articles.Length);
        var face = card.Face;
        Assert.All(
            [face.Title, face.Trust.Head, face.Support, .. face.Notes, .. face.Rows.SelectMany(r => r.Frames.Prepend(r.Speed))],
            words => Assert.Contains(words, articles[0].Value, StringComparison.Ordinal)
        );
    }

    /// <summary>Text on the page, on the paper of screens light and dark.</summary>
    [Theory]
    [InlineData(0)]
    [InlineData(1)]
    public void Text_on_a_page_has_contrast_4_5_light_and_dark(int scheme)
    {
        var colors = Regex.Matches(FieldCard.Html([FieldCard.Of(Curve(), Quick)]), ":root {[^}]*}")[scheme].Value;
        ScottPlot.Color Named(string name) => ScottPlot.Color.FromHex(Wide(Regex.Match(colors, $"--{name}: (#[0-9a-f]+)").Groups[1].Value));
        Assert.All(["ink", "quiet", "strong"], name => Assert.InRange(PaletteFacts.Contrast(Named(name), Named("paper")), 4.5, 21));
    }

    [Fact]
    public void A_picture_has_the_proportions_of_A6_and_carries_its_words()
    {
        var card = FieldCard.Of(Curve(), Quick);
        var path = Path.Combine(_folder, "card.png");
        card.SavePicture(path, 420);
        var png = File.ReadAllBytes(path);
        Assert.Equal(
            (420, 592),
            (BinaryPrimitives.ReadInt32BigEndian(png.AsSpan(16)), BinaryPrimitives.ReadInt32BigEndian(png.AsSpan(20)))
        );
        Assert.Contains(card.AlternativeText, Encoding.UTF8.GetString(png), StringComparison.Ordinal);
        Assert.StartsWith("Robin\nTrust", card.AlternativeText, StringComparison.Ordinal);
        using var read = SkiaSharp.SKBitmap.Decode(path);
        Assert.Equal(420, read.Width);
    }

    [Fact]
    public void What_cannot_be_written_is_refused_with_the_remedy()
    {
        var card = FieldCard.Of(Curve(), Quick);
        Assert.Throws<ArgumentException>(() => FieldCard.Html([]));
        Assert.Throws<ArgumentOutOfRangeException>(() => card.SavePicture(Path.Combine(_folder, "a.png"), 299));
        var error = Assert.Throws<ArgumentException>(() => card.SavePicture(Path.Combine(_folder, "a.jpg")));
        Assert.Contains("end the file name in .png", error.Message, StringComparison.Ordinal);
        Assert.Throws<ArgumentException>(() => FieldCard.Of(Curve(), Quick with { Rate = 80 }, TestContext.Current.CancellationToken));
    }

    private static string Wide(string hex) => hex.Length == 4 ? string.Concat(hex.Select((c, i) => i == 0 ? "#" : $"{c}{c}")) : hex;

    private static string Note(KeeperCurve curve, FieldCardOptions options) =>
        FieldCard.Of(curve, options, TestContext.Current.CancellationToken).Face.Notes[1];

    private static FieldCard Card(string photographer) => FieldCard.Of(Fitted(photographer), Quick, TestContext.Current.CancellationToken);

    private static KeeperCurve Curve() => s_curve.Value;

    private static KeeperCurve Fitted(string photographer)
    {
        Conditions On(string day) => Conditions.None with { Photographer = photographer, Session = day, Criterion = Criterion.Print };
        FrameTable table =
        [
            new(OneOver(60), 6, 6) { Conditions = On("2026-11-20") },
            new(OneOver(30), 6, 5) { Conditions = On("2026-11-20") },
            new(OneOver(15), 6, 3) { Conditions = On("2026-11-22") },
            new(OneOver(8), 6, 0) { Conditions = On("2026-11-22") },
        ];
        return (KeeperModel.Default with { Each = ["photographer"] }).Fit(table, cancellation: TestContext.Current.CancellationToken).Only;
    }
}
