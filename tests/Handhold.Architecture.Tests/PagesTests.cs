using System.Text.RegularExpressions;

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
            foreach (FileInfo picture in pages.Pictures)
            {
                picture.CopyTo(Path.Combine(House.Root, Path.GetDirectoryName(file)!, "pictures", picture.Name), overwrite: true);
            }
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
    public void A_link_to_a_file_of_the_repository_leads_somewhere(string file) => Assert.Empty(DeadLinks(file, House.Read(file)));

    [Fact]
    public void A_dead_link_is_seen() =>
        Assert.Equal(["no/such.md"], DeadLinks("docs/a.md", "[one](no/such.md#part), [two](../README.md), [three](https://example.org)"));

    private static IEnumerable<string> DeadLinks(string file, string page) =>
        from Match link in Regex.Matches(page, @"\]\((?<to>[^)#:]+)(#[^)]*)?\)")
        let to = link.Groups["to"].Value
        where !Path.Exists(Path.Combine(House.Root, Path.GetDirectoryName(file)!, to))
        select to;
}
