using System.Text.RegularExpressions;
using Microsoft.CodeAnalysis;
using Microsoft.CodeAnalysis.CSharp;
using Microsoft.CodeAnalysis.CSharp.Syntax;

namespace Handhold.Architecture.Tests;

public class FilesTests
{
    private const int Longest = 300;

    private static IEnumerable<string> Sources =>
        ((string[])["src", "tests", "samples", "benchmarks", "laws", "eng"]).SelectMany(House.SourceFiles);

    [Fact]
    public void No_file_is_long() => Assert.Empty(Sources.Select(f => TooLong(f, House.Read(f))).OfType<string>());

    [Fact]
    public void A_file_has_one_public_type_with_the_files_name() =>
        Assert.Empty(House.SourceFiles("src").SelectMany(f => Strangers(f, House.Read(f))));

    [Fact]
    public void No_file_is_a_drawer_for_odds_and_ends() => Assert.DoesNotContain(Sources, IsDrawer);

    [Fact]
    public void Text_files_end_their_lines_with_a_line_feed_alone() =>
        Assert.DoesNotContain(
            ((string[])["src", "tests", "samples", "benchmarks", "laws", "eng", "docs", ".ci"])
                .Where(folder => Directory.Exists(Path.Combine(House.Root, folder)))
                .SelectMany(folder => House.Files(folder, "*"))
                .Concat(Directory.EnumerateFiles(House.Root).Select(Path.GetFileName).OfType<string>())
                .Where(f => Path.GetExtension(f) is not (".png" or ".ttf")),
            f => HasCarriageReturn(House.Read(f))
        );

    [Fact]
    public void A_carriage_return_is_seen() => Assert.True(HasCarriageReturn("a\r\nb"));

    [Fact]
    public void A_long_file_is_seen() => Assert.NotNull(TooLong("A.cs", new string('\n', Longest + 1)));

    [Theory]
    [InlineData("A.cs", "public class B;", "A.cs declares B")]
    [InlineData("A.cs", "public class A; public enum B { C }", "A.cs declares B")]
    [InlineData("A.cs", "namespace N; public delegate void B();", "A.cs declares B")]
    public void A_public_type_in_a_strange_file_is_seen(string file, string text, string said) =>
        Assert.Equal([said], Strangers(file, text));

    [Theory]
    [InlineData("src/A.Pooling.cs", "public partial class A { public class Inner; } class B;")]
    [InlineData("src/A.cs", "public class A<T>;")]
    public void A_part_and_a_private_neighbour_pass(string file, string text) => Assert.Empty(Strangers(file, text));

    [Theory]
    [InlineData("src/Handhold/Models/Utils.cs")]
    [InlineData("src/Helpers.cs")]
    [InlineData("Extensions.cs")]
    public void A_drawer_is_seen(string file) => Assert.True(IsDrawer(file));

    private static bool HasCarriageReturn(string text) => text.Contains('\r', StringComparison.Ordinal);

    private static string? TooLong(string file, string text) =>
        text.Split('\n').Length - 1 is var lines && lines > Longest
            ? $"{file} has {lines} lines; split it by concern before {Longest}"
            : null;

    private static IEnumerable<string> Strangers(string file, string text) =>
        from declared in CSharpSyntaxTree
            .ParseText(text)
            .GetRoot()
            .DescendantNodes(n => n is not TypeDeclarationSyntax)
            .OfType<MemberDeclarationSyntax>()
        where declared.Modifiers.Any(m => m.IsKind(SyntaxKind.PublicKeyword))
        let name = declared switch
        {
            BaseTypeDeclarationSyntax type => type.Identifier.Text,
            DelegateDeclarationSyntax type => type.Identifier.Text,
            _ => null,
        }
        where name is not null && name != Path.GetFileName(file).Split('.')[0]
        select $"{file} declares {name}";

    private static bool IsDrawer(string file) =>
        Regex.IsMatch(Path.GetFileName(file), "^(Util|Utils|Utilities|Helper|Helpers|Common|Misc|Extensions)\\.cs$");
}
