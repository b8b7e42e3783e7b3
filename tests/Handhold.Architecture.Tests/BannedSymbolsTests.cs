using Microsoft.CodeAnalysis;

namespace Handhold.Architecture.Tests;

public class BannedSymbolsTests
{
    private static readonly Compilation s_all = House.Compile("Empty", []);

    private static IEnumerable<string> Banned => House.Read("eng/BannedSymbols.txt").Split('\n').Where(l => l.Length > 0);

    [Fact]
    public void Every_banned_symbol_exists_so_the_ban_bites() => Assert.DoesNotContain(Banned, l => !Exists(l.Split(';')[0]));

    [Fact]
    public void Every_ban_says_what_to_do_instead() => Assert.DoesNotContain(Banned, l => l.Split(';') is not [_, { Length: > 5 }]);

    [Fact]
    public void A_culture_less_overload_is_seen() => Assert.Contains("M:System.Double.Parse(System.String)", CultureLess("System.Double"));

    [Fact]
    public void A_symbol_that_does_not_exist_is_seen() => Assert.False(Exists("M:System.Double.Parse(System.Strong)"));

    [Theory]
    [InlineData("System.Double")]
    [InlineData("System.Single")]
    [InlineData("System.Decimal")]
    [InlineData("System.Int32")]
    [InlineData("System.Int64")]
    [InlineData("System.DateTime")]
    [InlineData("System.DateTimeOffset")]
    public void No_number_or_time_can_be_read_or_printed_without_a_culture(string type) =>
        Assert.Empty(CultureLess(type).Except(Banned.Select(l => l.Split(';')[0])));

    private static bool Exists(string id) => DocumentationCommentId.GetFirstSymbolForDeclarationId(id, s_all) is not null;

    /// <summary>The plain print of a whole number aside, in which no culture but for its minus sign takes part.</summary>
    private static IEnumerable<string> CultureLess(string type) =>
        from method in s_all.GetTypeByMetadataName(type)!.GetMembers().OfType<IMethodSymbol>()
        where method is { DeclaredAccessibility: Accessibility.Public, Name: "Parse" or "TryParse" or "ParseExact" or "ToString" }
        where !method.Parameters.Any(p => p.Type.Name == "IFormatProvider")
        where !(method is { Name: "ToString", Parameters.IsEmpty: true, ContainingType.Name: "Int32" or "Int64" })
        select method.GetDocumentationCommentId();
}
