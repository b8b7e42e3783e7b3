using System.Net;

namespace Handhold.Cli.Tests;

public class PictureTests(Fitted fitted)
{
    [Fact]
    public void One_curve_gives_the_file_that_was_named()
    {
        using Folder folder = new();
        var tool = Tool.Run("plot", fitted.PlainFit, "--out", folder["curve.svg"], "--rate", "70%", "--size", "600x400", "--json");
        Assert.Equal((0, ""), (tool.Code, tool.Error));
        Assert.Equal([folder["curve.svg"]], tool.Json.List("files").Select(f => f.GetString()));
        Assert.StartsWith("<", File.ReadAllText(folder["curve.svg"]), StringComparison.Ordinal);
    }

    [Fact]
    public void Several_curves_give_a_picture_each_with_the_curves_name_in_it()
    {
        using Folder folder = new();
        Assert.Equal(0, Tool.Run("plot", fitted.LensFit, "--out", folder["ada.svg"]).Code);
        Assert.Equal(["ada-ada-200-mm-print.svg", "ada-ada-50-mm-print.svg"], folder.Files.Order(StringComparer.Ordinal));
    }

    [Fact]
    public void Cards_go_on_one_page_or_into_a_picture_each()
    {
        using Folder folder = new();
        string[] quick = Fitted.Quick;
        Assert.Equal(
            0,
            Tool.RunWith(Tables.TwoLenses, ["card", "-", .. quick, "--out", folder["cards.html"], "--paper", "a4", "--json"]).Code
        );
        Assert.Contains("Ada · 200 mm · print", WebUtility.HtmlDecode(File.ReadAllText(folder["cards.html"])), StringComparison.Ordinal);
        var pictures = Tool.RunWith(Tables.TwoLenses, ["card", "-", .. quick, "--out", folder["card.png"], "--date", "today"]);
        Assert.Equal((0, ""), (pictures.Code, pictures.Error));
        Assert.Equal(["card-ada-200-mm-print.png", "card-ada-50-mm-print.png", "cards.html"], folder.Files.Order(StringComparer.Ordinal));
    }

    [Theory]
    [InlineData("setups", 1)]
    [InlineData("frames", 2, "--budget", "20")]
    [InlineData("keepers", 2, "--at", "1/60", "--frames", "6", "--bursts-of", "2")]
    [InlineData("prior", 2, "--theme", "dark")]
    [InlineData("fitted", 2)]
    [InlineData("residuals", 2)]
    public void Every_kind_of_picture_can_be_asked_for(string kind, int files, params string[] more)
    {
        using Folder folder = new();
        var tool = Tool.Run(["plot", fitted.LensFit, "--kind", kind, .. more, "--out", folder["a.svg"]]);
        Assert.Equal((0, ""), (tool.Code, tool.Error));
        Assert.Equal(files, folder.Files.Count());
    }

    [Theory]
    [InlineData("--kind stops", "no terms to tell in stops")]
    [InlineData("--kind keepers --at 1/60 --frames 6 --bursts-of 7", "no more than the plan")]
    [InlineData("--kind keepers --frames 6", "--at is missing")]
    [InlineData("--kind pie", "is not known")]
    public void A_picture_that_cannot_be_drawn_is_wrong_usage(string options, string said)
    {
        using Folder folder = new();
        var tool = Tool.Run(["plot", fitted.PlainFit, .. options.Split(' '), "--out", folder["a.svg"]]);
        Assert.Equal(2, tool.Code);
        Assert.Contains(said, tool.Error, StringComparison.Ordinal);
        Assert.Empty(folder.Files);
    }

    [Theory]
    [InlineData("card.pdf")]
    [InlineData("card.png", "--paper", "a4")]
    [InlineData("card.html", "--paper", "a5")]
    public void A_card_that_cannot_be_written_is_wrong_usage(string file, params string[] more) =>
        Assert.Equal(2, Tool.RunWith(Tables.Plain, ["card", "-", .. more, "--out", file]).Code);

    [Fact]
    public void A_folder_that_is_not_there_is_bad_input_and_nothing_is_left()
    {
        using Folder folder = new();
        Assert.Equal(3, Tool.Run("plot", fitted.PlainFit, "--out", Path.Combine(folder["no"], "curve.png")).Code);
        Assert.Equal(3, Tool.RunWith(Tables.Plain, ["fit", "-", .. Fitted.Quick, "--save", Path.Combine(folder["no"], "fit.json")]).Code);
        Assert.Empty(folder.Files);
    }
}
