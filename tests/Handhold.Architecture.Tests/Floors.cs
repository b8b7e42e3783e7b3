using Microsoft.CodeAnalysis;
using Microsoft.CodeAnalysis.CSharp;
using Microsoft.CodeAnalysis.CSharp.Syntax;

namespace Handhold.Architecture.Tests;

/// <summary>Which room of the core may use which: those on lower floors, none beside it, none above.</summary>
internal static class Floors
{
    private static readonly string[][] s_rooms =
    [
        ["Exposure", "Kernels"],
        ["Observations", "Likelihood", "Solvers", "Randomness", "Answers"],
        ["Models"],
        ["Curves"],
        ["Fitting", "Simulation"],
        ["Prediction"],
        ["Planning", "Diagnostics", "Serialization"],
    ];

    /// <summary>The floor of a room, 0 the lowest; -1 when the house has no such room.</summary>
    public static int Of(string room) => Array.FindIndex(s_rooms, floor => floor.Contains(room));

    /// <summary>The folder directly below the core's own in which a file lies.</summary>
    public static string RoomOf(string path) => path.Split('/') is ["src", "Handhold", var room, _, ..] ? room : "";

    /// <summary>Every use of a room that is not on a lower floor, as <c>file:line: symbol: from room to room</c>.</summary>
    public static IEnumerable<string> Breaches(CSharpCompilation core) =>
        from use in Uses(core)
        let home = RoomOf(use.Node.SyntaxTree.FilePath)
        from declared in use.Symbol.Locations
        where declared.IsInSource
        let room = RoomOf(declared.SourceTree!.FilePath)
        where room != home && Of(room) >= Of(home)
        select $"{Place(use.Node)}: {use.Symbol.ToDisplayString()}: {home} (floor {Of(home)}) may not use {room} (floor {Of(room)})";

    /// <summary>Every use of MathNet outside Kernels.</summary>
    public static IEnumerable<string> MathNetOutsideKernels(CSharpCompilation core) =>
        from use in Uses(core)
        where use.Symbol.ContainingAssembly?.Name == "MathNet.Numerics" && RoomOf(use.Node.SyntaxTree.FilePath) != "Kernels"
        select $"{Place(use.Node)}: {use.Symbol.ToDisplayString()}";

    /// <summary>Every name in the sources with what it stands for; a constructor that is called without its name counts too.</summary>
    public static IEnumerable<(SyntaxNode Node, ISymbol Symbol)> Uses(CSharpCompilation compilation) =>
        from tree in compilation.SyntaxTrees
        let meaning = compilation.GetSemanticModel(tree)
        from node in tree.GetRoot().DescendantNodes()
        where node is SimpleNameSyntax or ImplicitObjectCreationExpressionSyntax
        let symbol = meaning.GetSymbolInfo(node).Symbol
        where symbol is not (null or INamespaceSymbol)
        select (node, symbol is IMethodSymbol { ReducedFrom: { } original } ? original : symbol);

    /// <summary>File and line, as compilers print them.</summary>
    public static string Place(SyntaxNode node) =>
        $"{node.SyntaxTree.FilePath}:{node.GetLocation().GetLineSpan().StartLinePosition.Line + 1}";
}
