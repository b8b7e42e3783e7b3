namespace Handhold.Cli.Tests;

public class UsageTests
{
    [Theory]
    [InlineData("likelihood or bias-reduced", "--link", "probit")]
    [InlineData("likelihood or bias-reduced", "--link", "cloglog")]
    [InlineData("posterior or likelihood for shared luck", "--estimator", "bias-reduced", "--luck", "normal")]
    [InlineData("posterior or likelihood for shared luck", "--estimator", "bias-reduced", "--luck", "beta-binomial")]
    [InlineData("likelihood", "--luck", "beta-binomial")]
    [InlineData("posterior", "--estimator", "likelihood", "--luck", "normal", "--ceiling", "estimated")]
    [InlineData("likelihood with --luck normal", "--nodes", "3")]
    [InlineData("likelihood with --luck normal", "--estimator", "likelihood", "--luck", "beta-binomial", "--nodes", "3")]
    [InlineData("1 to 200", "--estimator", "likelihood", "--luck", "normal", "--nodes", "201")]
    [InlineData("--estimator posterior", "--estimator", "likelihood", "--scale", "stops")]
    [InlineData("--estimator likelihood", "--scale", "link")]
    [InlineData("posterior or likelihood", "--estimator", "bias-reduced", "--varies", "setup=both")]
    [InlineData("--luck none", "--varies", "session=intercept")]
    [InlineData("posterior or likelihood", "--estimator", "bias-reduced", "--ceiling", "estimated")]
    [InlineData("posterior or likelihood", "--estimator", "bias-reduced", "--floor", "estimated")]
    [InlineData("uses no priors", "--estimator", "likelihood", "--prior", "tau0=normal(0,1)")]
    [InlineData("exclude each other", "--estimator", "likelihood", "--no-terms", "--term", "focal")]
    [InlineData("is a term as well", "--estimator", "likelihood", "--each", "setup", "--term", "setup")]
    [InlineData("is no column", "--estimator", "likelihood", "--term", "no_such_column")]
    [InlineData("is there already", "--estimator", "likelihood", "--term", "exposure")]
    [InlineData("twice", "--estimator", "likelihood", "--term", "focal", "--term", "focal")]
    [InlineData("needs judge by itself", "--estimator", "likelihood", "--product", "exposure,judge")]
    [InlineData("not two terms", "--estimator", "likelihood", "--product", "exposure")]
    [InlineData("does not vary", "--estimator", "likelihood", "--within", "setup=photographer")]
    [InlineData("intercept, exposure, both", "--estimator", "likelihood", "--varies", "setup=tau")]
    [InlineData("twice", "--estimator", "likelihood", "--varies", "setup=both", "--varies", "setup=intercept")]
    [InlineData("within itself", "--estimator", "likelihood", "--varies", "setup=both", "--within", "setup=setup")]
    [InlineData("varies as well", "--estimator", "likelihood", "--varies", "setup=both", "--term", "setup")]
    [InlineData("choose one", "--estimator", "likelihood", "--varies", "setup=both", "--each", "setup")]
    [InlineData("one and --floor 0", "--estimator", "likelihood", "--varies", "setup=both", "--ceiling", "0.97")]
    [InlineData("burst=intercept", "--estimator", "likelihood", "--varies", "setup=both", "--luck", "normal")]
    [InlineData("Laplace", "--estimator", "likelihood", "--varies", "setup=both", "--nodes", "9")]
    public void What_excludes_each_other_is_refused_with_the_way_out(string remedy, params string[] options) =>
        Refused(remedy, ["fit", "-", .. options]);

    [Theory]
    [InlineData("simulate", "--speeds", "1/60")]
    [InlineData("fit", "--bogus", "3")]
    [InlineData("rate", "--bogus")]
    [InlineData("frames", "-", "--bogus", "3")]
    public void An_option_that_no_verb_knows_is_named(params string[] arguments) =>
        Assert.Contains("`--", Tool.Run(arguments).Error, StringComparison.Ordinal);

    [Theory]
    [InlineData("--level", "0,95")]
    [InlineData("--ceiling", "0,97")]
    [InlineData("--floor", "0,02")]
    [InlineData("--seed", "1,000")]
    public void A_comma_in_a_number_is_refused(params string[] option) => Refused("comma", ["fit", "-", .. option]);

    [Theory]
    [InlineData("rate", "-", "--at", "0,5")]
    [InlineData("exposure", "-", "--rate", "0,5")]
    [InlineData("frames", "--known-rate", "0,5", "--keepers", "1", "--assurance", "95%")]
    [InlineData("frames", "--known-rate", "0.5", "--keepers", "1", "--assurance", "95%", "--budget", "1,000")]
    public void A_comma_in_a_number_of_a_question_is_refused(params string[] args) => Refused("comma", args);

    [Theory]
    [InlineData("--level", "1")]
    [InlineData("--level", "95")]
    [InlineData("--level", "0%")]
    [InlineData("--level", "NaN")]
    [InlineData("--ceiling", "0")]
    [InlineData("--ceiling", "101%")]
    [InlineData("--floor", "1")]
    [InlineData("--luck", "good")]
    [InlineData("--seed", "-1")]
    [InlineData("--keeper-from-grade", "0")]
    [InlineData("--each", "setup,setup")]
    [InlineData("--each", "no_such_column")]
    [InlineData("--burst", "no_such_column")]
    [InlineData("--prior", "tau0")]
    [InlineData("--prior", "tau0=normal(1)")]
    [InlineData("--prior", "tau0=normal(1,0)")]
    [InlineData("--prior", "b=normal(1,1)")]
    [InlineData("--prior", "beta=normal(1,1)")]
    [InlineData("--prior", "sessionLuck=half-normal(-1)")]
    [InlineData("--level", "90%", "--level", "80%")]
    [InlineData("--each", "setup", "--together")]
    [InlineData("--burst", "none", "--burst-per-row")]
    [InlineData("--prior", "floor=beta(1,1)", "--prior", "floor=beta(1,2)")]
    [InlineData("--nonsense")]
    [InlineData("--level")]
    public void Options_that_cannot_be_followed_are_wrong_usage(params string[] options) => Refused(options[0], ["fit", "-", .. options]);

    [Theory]
    [InlineData("rate", "-")]
    [InlineData("rate", "-", "--at", "fast")]
    [InlineData("rate", "-", "--at", "1/60", "--day", "tomorrow")]
    [InlineData("rate", "-", "--at", "1/60", "--whose", "population")]
    [InlineData("rate", "-", "--at", "1/60", "--set", "setup=none")]
    [InlineData("exposure", "-")]
    [InlineData("slowest", "-", "--assurance", "90%")]
    [InlineData("slowest", "-", "--rate", "80%")]
    [InlineData("slowest", "-", "--rate", "80%", "--frames", "3", "--keepers", "1", "--assurance", "90%")]
    [InlineData("slowest", "-", "--frames", "3", "--keepers", "4", "--assurance", "90%")]
    [InlineData("frames", "-", "--keepers", "1", "--assurance", "90%")]
    [InlineData("compare", "-", "--rate", "80%")]
    [InlineData("compare", "-", "--between", "setup", "--rate", "80%")]
    [InlineData("plot", "-")]
    [InlineData("plot", "-", "--out", "curve.pdf")]
    [InlineData("plot", "-", "--out", "curve.png", "--size", "big")]
    [InlineData()]
    [InlineData("fit")]
    [InlineData("fortune")]
    [InlineData("fit", "-", "another.csv")]
    public void Questions_that_lack_something_are_wrong_usage(params string[] args) =>
        Assert.Equal(2, Tool.RunWith(Tables.Plain, args).Code);

    [Fact]
    public void Several_criteria_never_make_one_curve()
    {
        var table = "exposure,frames,keepers,criterion\n1/60,6,6,print\n1/30,6,3,pixel\n";
        Assert.Equal(2, Tool.RunWith(table, "fit", "-", "--together").Code);
        Assert.Equal(0, Tool.RunWith(table, ["fit", "-", .. Fitted.Quick]).Code);
    }

    [Fact]
    public void An_argument_that_starts_with_an_at_sign_is_a_file_name_and_no_response_file()
    {
        using Folder folder = new();
        var file = folder.Write("options", "--json");
        Assert.Equal((3, ""), (Tool.Run("fit", "@" + file).Code, Tool.Run("fit", "@" + file).Output));
    }

    [Fact]
    public void Wrong_usage_in_json_is_one_object_with_the_value_and_the_remedy()
    {
        var tool = Tool.Run("rate", "table.csv", "--day", "tomorrow", "--json");
        var error = Assert.Single(tool.Json.List("errors"));
        Assert.Equal((2, "", "wrongUsage"), (tool.Code, tool.Error, error.Text("code")));
        Assert.Equal(["schemaVersion", "errors"], tool.Json.Names());
    }

    [Theory]
    [InlineData("--help")]
    [InlineData("frames", "--help")]
    [InlineData("--version")]
    public void Help_and_version_are_no_errors(params string[] args) => Assert.Equal((0, ""), (Tool.Run(args).Code, Tool.Run(args).Error));

    private static void Refused(string because, string[] args)
    {
        var tool = Tool.RunWith(Tables.Plain, args);
        Assert.Equal((2, ""), (tool.Code, tool.Output));
        Assert.Contains(because, tool.Error, StringComparison.Ordinal);
    }
}
