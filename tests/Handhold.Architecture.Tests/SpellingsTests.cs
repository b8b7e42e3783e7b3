using System.Text.RegularExpressions;
using Handhold.Tables;

namespace Handhold.Architecture.Tests;

public class SpellingsTests
{
    /// <summary>The README's table of spellings: what is written, and what it is.</summary>
    public static TheoryData<string, string> Table
    {
        get
        {
            TheoryData<string, string> spellings = [];
            foreach (string row in House.Read("README.md").Split("written as |")[1].Split("\n\n")[0].Split('\n').Skip(2))
            {
                string[] cells = row.Split('|');
                foreach (Match spelling in Regex.Matches(cells[1], "`([^`]+)`"))
                {
                    spellings.Add(spelling.Groups[1].Value, cells[2].Trim());
                }
            }
            return spellings;
        }
    }

    [Theory]
    [MemberData(nameof(Table))]
    public void A_spelling_is_what_the_README_says(string written, string meaning)
    {
        string cell = written.Contains(',', StringComparison.Ordinal) ? $"\"{written}\"" : written;
        string table = $"exposure,frames,keepers\n{cell},6,3\n";
        if (meaning.StartsWith("refused", StringComparison.Ordinal))
        {
            Assert.Throws<TableException>(() => Read(table));
        }
        else
        {
            string speed = meaning switch
            {
                "half a second" => "0.5 s",
                "two seconds" => "2 s",
                _ => meaning.Replace("seconds", "s", StringComparison.Ordinal),
            };
            Assert.Equal(speed, Read(table)[0].Exposure.ToString());
        }
    }

    private static FrameTable Read(string table) =>
        TableReader.Read(new StringReader(table), "README", cancellation: TestContext.Current.CancellationToken);
}
