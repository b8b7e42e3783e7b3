using Microsoft.CodeAnalysis;
using Microsoft.CodeAnalysis.CSharp;
using Microsoft.CodeAnalysis.CSharp.Syntax;

namespace Handhold.Architecture.Tests;

public class CultureTests
{
    [Theory]
    [InlineData("Handhold")]
    [InlineData("Handhold.Tables")]
    [InlineData("Handhold.Plots")]
    [InlineData("Handhold.Photos")]
    [InlineData("Handhold.Cli")]
    public void No_fraction_is_put_into_text_without_a_culture(string project) => Assert.Empty(Careless(House.Compile(project)));

    [Theory]
    [InlineData("""string F(double d) => $"{d}";""")]
    [InlineData("""string F(double? d) => $"{d:0.0} stops";""")]
    [InlineData("""string F(decimal d) => "about " + d;""")]
    [InlineData("""string F(double d) { var s = ""; s += d; return s; }""")]
    public void A_careless_fraction_is_seen(string bad) =>
        Assert.Single(Careless(House.Compile("Bad", [("A.cs", $"class A {{ {bad} }}")])));

    [Theory]
    [InlineData("""string F(int n) => $"{n} of {n + 1}";""")]
    [InlineData("""string F(double d) => string.Create(System.Globalization.CultureInfo.InvariantCulture, $"{d}");""")]
    [InlineData("""string F(double d) => FormattableString.Invariant($"{d}");""")]
    public void Whole_numbers_and_a_named_culture_pass(string good) =>
        Assert.Empty(Careless(House.Compile("Good", [("A.cs", $"class A {{ {good} }}")])));

    private static IEnumerable<string> Careless(CSharpCompilation project) =>
        from tree in project.SyntaxTrees
        let meaning = project.GetSemanticModel(tree)
        from node in tree.GetRoot().DescendantNodes()
        from part in Parts(node, meaning)
        where IsFraction(meaning.GetTypeInfo(part).Type)
        select $"{Floors.Place(part)}: {part}";

    /// <summary>What an expression turns into text by the culture of the moment.</summary>
    private static IEnumerable<ExpressionSyntax> Parts(SyntaxNode node, SemanticModel meaning) =>
        node switch
        {
            InterpolatedStringExpressionSyntax text when IsString(meaning.GetTypeInfo(text).ConvertedType) => text
                .Contents.OfType<InterpolationSyntax>()
                .Select(i => i.Expression),
            BinaryExpressionSyntax { RawKind: (int)SyntaxKind.AddExpression } sum when IsString(meaning.GetTypeInfo(sum).Type) =>
            [
                sum.Left,
                sum.Right,
            ],
            AssignmentExpressionSyntax { RawKind: (int)SyntaxKind.AddAssignmentExpression } sum
                when IsString(meaning.GetTypeInfo(sum).Type) => [sum.Right],
            _ => [],
        };

    private static bool IsString(ITypeSymbol? type) => type?.SpecialType == SpecialType.System_String;

    private static bool IsFraction(ITypeSymbol? type) =>
        type is INamedTypeSymbol { OriginalDefinition.SpecialType: SpecialType.System_Nullable_T } maybe
            ? IsFraction(maybe.TypeArguments[0])
            : type?.SpecialType
                is SpecialType.System_Double
                    or SpecialType.System_Single
                    or SpecialType.System_Decimal
                    or SpecialType.System_DateTime;
}
