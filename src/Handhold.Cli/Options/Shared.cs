using System.CommandLine;

namespace Handhold.Cli;

/// <summary>Options that mean the same wherever they occur.</summary>
internal static class Shared
{
    public static Option<bool> Json() =>
        new("--json") { Description = "The report as JSON on standard output, errors too, and nothing else on it." };

    public static Option<string[]> At() =>
        new("--at") { HelpName = "SPEED", Description = "A shutter speed such as 1/15; may be given several times." };

    public static Option<string> Rate() => new("--rate") { HelpName = "P", Description = "Wanted keeper rate, as 0.8 or 80%." };

    public static Option<string> Keepers() => new("--keepers") { HelpName = "K", Description = "Keepers wanted." };

    public static Option<string> Assurance() => new("--assurance") { HelpName = "C", Description = "How sure to be, as 0.95 or 95%." };

    /// <summary>The speeds of a question that needs at least one.</summary>
    public static ShutterSpeed[] Speeds(this ParseResult given, Option<string[]> at) =>
        given.GetValue(at) is { Length: > 0 } texts
            ? [.. texts.Select(text => Reading.Speed(at.Name, text))]
            : throw Given.Missing(at.Name);
}
