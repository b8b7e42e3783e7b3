using System.Buffers.Binary;
using System.Globalization;
using System.Xml.Linq;
using ScottPlot;

namespace Handhold.Plots.Tests;

public sealed class PictureFacts : IDisposable
{
    private readonly string _folder = Directory.CreateTempSubdirectory().FullName;

    public void Dispose() => Directory.Delete(_folder, recursive: true);

    public static TheoryData<string> Names => [.. Scenes.Names];

    [Theory]
    [InlineData(1200, 800)]
    [InlineData(600, 400)]
    [InlineData(333, 777)]
    public void A_png_has_the_size_asked_for(int width, int height)
    {
        var png = File.ReadAllBytes(Save("a.png", "ordinary", width, height));
        Assert.Equal(
            (width, height),
            (BinaryPrimitives.ReadInt32BigEndian(png.AsSpan(16)), BinaryPrimitives.ReadInt32BigEndian(png.AsSpan(20)))
        );
    }

    [Theory, MemberData(nameof(Names))]
    public void An_svg_is_the_same_from_run_to_run_and_in_every_culture(string name)
    {
        var first = File.ReadAllText(Save("a.svg", name));
        var culture = CultureInfo.CurrentCulture;
        try
        {
            CultureInfo.CurrentCulture = new CultureInfo("de-DE");
            Assert.Equal(first, File.ReadAllText(Save("b.svg", name)));
        }
        finally
        {
            CultureInfo.CurrentCulture = culture;
        }
    }

    [Fact]
    public void Pictures_made_side_by_side_are_the_same()
    {
        var alone = File.ReadAllText(Save("alone.svg", "ordinary"));
        Parallel.For(0, 8, i => Save($"{i}.svg", "ordinary"));
        Assert.All(Enumerable.Range(0, 8), i => Assert.Equal(alone, File.ReadAllText(Path.Combine(_folder, $"{i}.svg"))));
    }

    [Theory, MemberData(nameof(Names))]
    public void An_svg_is_well_formed_scales_and_says_everything_in_the_embedded_font(string name)
    {
        var scene = Scenes.Named(name);
        var root = XDocument.Load(Save("a.svg", name)).Root!;
        Assert.Equal("0 0 1200 800", root.Attribute("viewBox")?.Value);
        var texts = root.Descendants().Where(e => e.Name.LocalName == "text").ToArray();
        Assert.All(texts, t => Assert.StartsWith("'Source Sans 3',", t.Attribute("font-family")?.Value, StringComparison.Ordinal));
        Assert.All(texts.SelectMany(t => t.Attributes("x").Concat(t.Attributes("y"))), a => Assert.NotEqual(',', a.Value.TrimEnd()[^1]));
        // The renderer writes the glyphs' characters, so a space that does not break comes back as a plain one.
        var said = texts.Select(t => t.Value.Trim()).ToArray();
        Assert.All(
            scene.Captions.Append(scene.Title).Append(scene.Subject).Where(words => words.Length > 0),
            words => Assert.Contains(words.Replace('\u00A0', ' '), said)
        );
    }

    [Fact]
    public void A_picture_carries_a_text_alternative_with_its_finding_and_its_counts()
    {
        var plot = CurveDrawing.Draw(Scenes.Named("ordinary"));
        var words = plot.AlternativeText();
        Assert.StartsWith("Half the frames are keepers at 1/13\u00A0s\n", words, StringComparison.Ordinal);
        Assert.Contains("1/60\u00A0s 6 of 6", words, StringComparison.Ordinal);
        var svg = XDocument.Load(Save("a.svg", "ordinary")).Root!;
        Assert.Equal(words, string.Join('\n', svg.Elements().Where(e => e.Name.LocalName is "title" or "desc").Select(e => e.Value)));
        Assert.Contains(words, System.Text.Encoding.UTF8.GetString(File.ReadAllBytes(Save("a.png", "ordinary"))), StringComparison.Ordinal);
    }

    [Fact]
    public void Saving_leaves_the_scale_of_the_plot_as_it_was()
    {
        var plot = CurveDrawing.Draw(Scenes.Named("ordinary"));
        plot.ScaleFactor = 1.25;
        plot.SavePicture(Path.Combine(_folder, "a.png"));
        Assert.Equal(1.25, plot.ScaleFactor);
    }

    [Fact]
    public void A_picture_that_cannot_be_written_leaves_nothing_behind()
    {
        using Plot plot = new();
        Assert.Throws<DirectoryNotFoundException>(() => plot.SavePicture(Path.Combine(_folder, "none", "a.png")));
        Directory.CreateDirectory(Path.Combine(_folder, "taken.png"));
        Assert.ThrowsAny<SystemException>(() => plot.SavePicture(Path.Combine(_folder, "taken.png")));
        Assert.Empty(Directory.EnumerateFiles(_folder));
    }

    [Fact]
    public void An_existing_picture_is_replaced()
    {
        var path = Path.Combine(_folder, "a.svg");
        File.WriteAllText(path, "old");
        Save("a.svg", "ordinary");
        Assert.StartsWith("<?xml", File.ReadAllText(path), StringComparison.Ordinal);
        Assert.Single(Directory.EnumerateFiles(_folder));
    }

    [Theory]
    [InlineData("a.jpg")]
    [InlineData("a")]
    public void Another_extension_is_refused_with_the_remedy(string file)
    {
        using Plot plot = new();
        var error = Assert.Throws<ArgumentException>(() => plot.SavePicture(Path.Combine(_folder, file)));
        Assert.Contains("end the file name in .png or .svg", error.Message, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData(199, 400)]
    [InlineData(600, 10_001)]
    public void A_size_that_nobody_can_read_is_refused(int width, int height)
    {
        using Plot plot = new();
        Assert.Throws<ArgumentOutOfRangeException>(() => plot.SavePicture(Path.Combine(_folder, "a.png"), width, height));
    }

    private string Save(string file, string scene, int width = 1200, int height = 800)
    {
        var path = Path.Combine(_folder, file);
        CurveDrawing.Draw(Scenes.Named(scene)).SavePicture(path, width, height);
        return path;
    }
}
