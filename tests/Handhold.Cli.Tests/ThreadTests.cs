using System.Diagnostics;

namespace Handhold.Cli.Tests;

public class ThreadTests
{
    /// <summary>Made by hand: two grips, two lenses, bursts of two frames.</summary>
    private static readonly string s_table =
        "exposure,frames,keepers,grip,setup,burst\n"
        + string.Concat(
            from grip in new[] { "free", "braced" }
            from setup in new[] { "long", "wide" }
            from stop in Enumerable.Range(0, 5)
            let keepers = Math.Clamp(3 - stop + (grip == "braced" ? 1 : 0), 0, 2)
            select FormattableString.Invariant($"1/{250 >> stop},2,{keepers},{grip},{setup},{grip} {setup} {stop}\n")
        );

    [Theory]
    [InlineData("posterior")]
    [InlineData("bias-reduced")]
    public void Fits_with_terms_are_the_same_on_one_processor_and_on_two(string estimator)
    {
        using Folder folder = new();
        var table = folder.Write("grips.csv", s_table);
        string[] arguments = ["fit", table, "--term", "grip", "--estimator", estimator, "--json"];
        var one = On("1", arguments);
        Assert.Contains("\"inStops\"", one, StringComparison.Ordinal);
        Assert.Equal(one, On("2", arguments));
    }

    private static string On(string processors, string[] arguments)
    {
        ProcessStartInfo start = new("dotnet", ["exec", Path.Combine(AppContext.BaseDirectory, "Handhold.Cli.dll"), .. arguments])
        {
            RedirectStandardOutput = true,
            Environment = { ["DOTNET_PROCESSOR_COUNT"] = processors },
        };
        using var process = Process.Start(start)!;
        var said = process.StandardOutput.ReadToEnd();
        process.WaitForExit();
        Assert.Equal(0, process.ExitCode);
        return said;
    }
}
