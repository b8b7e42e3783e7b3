using System.Text.Json;
using Handhold.Cli.Tests;

[assembly: AssemblyFixture(typeof(Fitted))]

namespace Handhold.Cli.Tests;

/// <summary>Fits that several tests look at, made once.</summary>
public sealed class Fitted : IDisposable
{
    private readonly Folder _folder = new();

    public Fitted()
    {
        PlainTable = _folder.Write("plain.csv", Tables.Plain);
        LensTable = _folder.Write("lenses.csv", Tables.TwoLenses);
        PlainFit = _folder["plain.json"];
        LensFit = _folder["lenses.json"];
        Plain = Tool.Run("fit", PlainTable, "--json").Json;
        Tool.Run(["fit", PlainTable, .. Quick, "--save", PlainFit]);
        Lenses = Tool.Run(["fit", LensTable, .. Quick, "--save", LensFit, "--json"]).Json;
    }

    /// <summary>A model that is fitted in no time.</summary>
    public static string[] Quick { get; } = ["--luck", "none", "--ceiling", "one"];

    public string PlainTable { get; }
    public string LensTable { get; }

    /// <summary>Saved, with the quick model.</summary>
    public string PlainFit { get; }

    /// <summary>Saved, with the quick model.</summary>
    public string LensFit { get; }

    /// <summary>The report of <c>fit --json</c> with the standard model.</summary>
    public JsonElement Plain { get; }

    /// <summary>The report of <c>fit --json</c> with the quick model.</summary>
    public JsonElement Lenses { get; }

    /// <summary>Every screen for people.</summary>
    internal IReadOnlyList<Tool> Screens =>
        field ??= [
            Tool.Run("fit", LensFit),
            Tool.Run("rate", LensFit, "--at", "1/60", "--at", "1/125"),
            Tool.Run("exposure", LensFit, "--rate", "70%"),
            Tool.Run("slowest", LensFit, "--rate", "50%", "--assurance", "80%"),
            Tool.Run("frames", LensFit, "--at", "1/60", "--keepers", "1", "--assurance", "90%", "--bursts-of", "3"),
            Tool.Run("compare", LensFit, "--between", "setup", "--rate", "50%"),
        ];

    public void Dispose() => _folder.Dispose();
}
