namespace Handhold.Architecture.Tests;

public class PagesTests
{
    public static TheoryData<string> All => [.. Pages.All];

    [Theory]
    [MemberData(nameof(All))]
    public void A_page_shows_what_its_programs_and_commands_say(string file)
    {
        string page = House.Read(file);
        using Pages pages = new();
        string today = pages.Replay(page);
        if (Environment.GetEnvironmentVariable("HANDHOLD_WRITE_PAGES") == "1")
        {
            File.WriteAllText(Path.Combine(House.Root, file), today);
        }
        Assert.Equal(page, today);
    }

    [Fact]
    public void A_page_that_shows_something_else_is_seen()
    {
        using Pages pages = new();
        Assert.Equal(
            "```csharp\nConsole.WriteLine(new Handhold.Stops(1));\n```\n\n```text\n+1.0 stops\n```\n",
            pages.Replay("```csharp\nConsole.WriteLine(new Handhold.Stops(1));\n```\n\n```text\n+1.5 stops\n```\n")
        );
    }

    [Fact]
    public void A_command_on_a_page_is_run()
    {
        using Pages pages = new();
        Assert.NotEqual("```console\n$ handhold --version\nnever\n```\n", pages.Replay("```console\n$ handhold --version\nnever\n```\n"));
    }

    [Theory]
    [MemberData(nameof(All))]
    public void A_link_to_a_file_of_the_repository_leads_somewhere(string file) =>
        Assert.All(
            System.Text.RegularExpressions.Regex.Matches(House.Read(file), @"\]\((?<to>[^)#:]+)(#[^)]*)?\)"),
            link =>
            {
                string to = Path.Combine(House.Root, Path.GetDirectoryName(file)!, link.Groups["to"].Value);
                Assert.True(File.Exists(to) || Directory.Exists(to), $"{file} links to {link.Groups["to"].Value}");
            }
        );
}
