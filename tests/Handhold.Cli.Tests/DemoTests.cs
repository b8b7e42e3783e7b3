namespace Handhold.Cli.Tests;

public class DemoTests
{
    [Fact]
    public void The_demo_does_the_whole_job_and_says_that_its_data_are_invented()
    {
        using Folder folder = new();
        var tool = Tool.Run("demo", folder["out"]);
        Assert.Equal((0, ""), (tool.Code, tool.Error));
        Assert.StartsWith("The data are invented", tool.Output, StringComparison.Ordinal);
        var files = folder.Files.ToArray();
        Assert.Contains("clock-museum.csv", files);
        Assert.Contains("clock-museum.json", files);
        Assert.True(files.Count(f => f.EndsWith(".png", StringComparison.Ordinal)) >= 5);
        Assert.DoesNotContain(files, f => f.StartsWith('.'));
        Assert.Equal(0, Tool.Run("rate", folder[Path.Combine("out", "clock-museum.json")], "--at", "1/30", "--json").Code);
    }
}
