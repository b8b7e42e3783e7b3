using System.Collections.Immutable;
using System.Reflection;
using Microsoft.CodeAnalysis;
using Microsoft.CodeAnalysis.CSharp;

namespace Handhold.Architecture.Tests;

/// <summary>The repository as it lies on disk, and its projects as compilations.</summary>
internal static class House
{
    private const string ImplicitUsings = """
        global using System; global using System.Collections.Generic; global using System.IO; global using System.Linq;
        global using System.Net.Http; global using System.Threading; global using System.Threading.Tasks;
        """;

    private static readonly CSharpParseOptions s_syntax = new(LanguageVersion.CSharp14, DocumentationMode.None);

    private static readonly ImmutableArray<(string Name, MetadataReference Reference)> s_references =
    [
        .. ((string)AppContext.GetData("TRUSTED_PLATFORM_ASSEMBLIES")!)
            .Split(Path.PathSeparator)
            .Select(f => (Path.GetFileNameWithoutExtension(f), (MetadataReference)MetadataReference.CreateFromFile(f))),
    ];

    /// <summary>The folder that has the solution.</summary>
    public static string Root { get; } = FindRoot();

    /// <summary>The assemblies that ship.</summary>
    public static IReadOnlyList<Assembly> Shipped { get; } =
    [
        typeof(KeeperCurve).Assembly,
        Assembly.Load("Handhold.Tables"),
        Assembly.Load("Handhold.Plots"),
        Assembly.Load("Handhold.Photos"),
        Assembly.Load("Handhold.Cli"),
    ];

    /// <summary>C# files below a folder of the repository, with forward slashes, relative to the repository.</summary>
    public static IEnumerable<string> SourceFiles(string folder) => Files(folder, "*.cs");

    /// <summary>Files below a folder of the repository, without what builds leave behind.</summary>
    public static IEnumerable<string> Files(string folder, string pattern) =>
        Directory
            .EnumerateFiles(Path.Combine(Root, folder), pattern, SearchOption.AllDirectories)
            .Select(f => Path.GetRelativePath(Root, f).Replace('\\', '/'))
            .Where(f => !f.Split('/').Any(part => part is "artifacts" or "bin" or "obj" or "out" or ".git"))
            .Order(StringComparer.Ordinal);

    public static string Read(string file) => File.ReadAllText(Path.Combine(Root, file));

    /// <summary>The sources of a shipped project, compiled against what the tests run on.</summary>
    public static CSharpCompilation Compile(string project) => Compile(project, SourceFiles($"src/{project}").Select(f => (f, Read(f))));

    /// <summary>Sources with their paths, compiled in memory.</summary>
    public static CSharpCompilation Compile(
        string name,
        IEnumerable<(string Path, string Text)> sources,
        OutputKind kind = OutputKind.DynamicallyLinkedLibrary
    ) =>
        CSharpCompilation.Create(
            name,
            [
                CSharpSyntaxTree.ParseText(ImplicitUsings, s_syntax),
                .. sources.Select(s => CSharpSyntaxTree.ParseText(s.Text, s_syntax, s.Path)),
            ],
            s_references.Where(r => r.Name != name).Select(r => r.Reference),
            new CSharpCompilationOptions(kind, nullableContextOptions: NullableContextOptions.Enable)
        );

    /// <summary>Sources compiled and loaded, to be looked at by reflection or run.</summary>
    public static Assembly Load(string text, OutputKind kind = OutputKind.DynamicallyLinkedLibrary)
    {
        using MemoryStream image = new();
        var emitted = Compile(Path.GetRandomFileName(), [("Example.cs", text)], kind).Emit(image);
        return emitted.Success
            ? Assembly.Load(image.ToArray())
            : throw new ArgumentException($"The example does not compile: {string.Join("; ", emitted.Diagnostics)}", nameof(text));
    }

    private static string FindRoot()
    {
        DirectoryInfo? folder = new(AppContext.BaseDirectory);
        while (folder is not null && !File.Exists(Path.Combine(folder.FullName, "Handhold.slnx")))
        {
            folder = folder.Parent;
        }
        return folder?.FullName ?? throw new InvalidOperationException($"No folder above {AppContext.BaseDirectory} has Handhold.slnx.");
    }
}
