using System.Diagnostics;
using System.Text.RegularExpressions;
using Microsoft.CodeAnalysis;

namespace Handhold.Architecture.Tests;

/// <summary>
/// What the documentation shows is what happens. In a page a <c>csharp</c> block is a whole program, and a <c>text</c> block right after it is what
/// the program prints; in a <c>console</c> block the lines after <c>$ handhold ...</c> are what the tool prints. A <c>csv</c> block whose first line is
/// <c># name.csv</c> is that file.
/// </summary>
internal sealed partial class Pages : IDisposable
{
    private readonly DirectoryInfo _folder = Directory.CreateTempSubdirectory("handhold-pages-");

    /// <summary>The pages of the project.</summary>
    public static IEnumerable<string> All =>
        ["README.md", "DEVELOPERS.md", .. House.Files("src", "README.md"), .. House.Files("docs", "*.md")];

    /// <summary>The page again, with the output of every program and command as it is today. Blocks share a folder, in their order.</summary>
    public string Replay(string page) =>
        Block()
            .Replace(
                page,
                block =>
                    block.Groups["code"] is { Success: true } code ? Program(block, code.Value)
                    : block.Groups["file"] is { Success: true } file ? Put(block, file.Value)
                    : Commands(block)
            );

    /// <summary>The pictures that the page's programs drew.</summary>
    public IEnumerable<FileInfo> Pictures =>
        _folder.EnumerateDirectories("pictures").SelectMany(p => p.EnumerateFiles()).OrderBy(f => f.Name, StringComparer.Ordinal);

    public void Dispose() => _folder.Delete(recursive: true);

    [GeneratedRegex(
        "^```csharp\n(?<code>.*?)^```\n(?:\n?```text\n(?<said>.*?)^```\n)?|^```console\n(?<lines>.*?)^```\n|^```csv\n(?<file># (?<name>\\S+)\n.*?)^```\n",
        RegexOptions.Multiline | RegexOptions.Singleline
    )]
    private static partial Regex Block();

    [GeneratedRegex("\"(?<word>[^\"]*)\"|(?<word>\\S+)")]
    private static partial Regex Words();

    private string Program(Match block, string code)
    {
        string name = Path.GetRandomFileName();
        string dll = Path.Combine(AppContext.BaseDirectory, name + ".dll");
        try
        {
            var emitted = House.Compile(name, [("page.cs", code)], OutputKind.ConsoleApplication).Emit(dll);
            Assert.True(emitted.Success, string.Join('\n', emitted.Diagnostics.Where(d => d.Severity == DiagnosticSeverity.Error)));
            string own = Path.Combine(AppContext.BaseDirectory, typeof(Pages).Assembly.GetName().Name!);
            string said = Run(["exec", "--depsfile", own + ".deps.json", "--runtimeconfig", own + ".runtimeconfig.json", dll]);
            return block.Groups["said"] is { Success: true } shown
                ? block.Value.Replace($"```text\n{shown.Value}```", $"```text\n{said}```", StringComparison.Ordinal)
                : block.Value;
        }
        finally
        {
            File.Delete(dll);
        }
    }

    private string Put(Match block, string text)
    {
        File.WriteAllText(Path.Combine(_folder.FullName, block.Groups["name"].Value), text);
        return block.Value;
    }

    private string Commands(Match block) =>
        "```console\n"
        + string.Concat(
            block
                .Groups["lines"]
                .Value.Split('\n')
                .Where(l => l.StartsWith("$ handhold ", StringComparison.Ordinal))
                .Select(l => l + "\n" + Tool(l["$ handhold ".Length..]))
        )
        + "```\n";

    private string Tool(string arguments) =>
        Run([
            "exec",
            Path.Combine(AppContext.BaseDirectory, "Handhold.Cli.dll"),
            .. Words().Matches(arguments).Select(m => m.Groups["word"].Value),
        ]);

    private string Run(IEnumerable<string> arguments)
    {
        using Process process = new()
        {
            StartInfo = new("dotnet", arguments)
            {
                WorkingDirectory = _folder.FullName,
                RedirectStandardOutput = true,
                RedirectStandardError = true,
            },
        };
        process.Start();
        Task<string> errors = process.StandardError.ReadToEndAsync();
        string said = process.StandardOutput.ReadToEnd();
        process.WaitForExit();
        return said + errors.Result;
    }
}
