using System.CommandLine;
using System.CommandLine.Help;
using System.CommandLine.Parsing;

namespace Handhold.Cli;

/// <summary>The whole tool: arguments in, exit code out.</summary>
internal static class CommandLine
{
    public static int Run(string[] args, TextReader input, TextWriter output, TextWriter error) =>
        Run(args, new Desk(input, output, error));

    public static int Run(string[] args, Desk desk)
    {
        try
        {
            var parsed = Root(desk).Parse(args, new ParserConfiguration { ResponseFileTokenReplacer = null, EnablePosixBundling = false });
            Check(parsed);
            return parsed.Invoke(
                new InvocationConfiguration
                {
                    Output = desk.Output,
                    Error = desk.Error,
                    EnableDefaultExceptionHandler = false,
                    ProcessTerminationTimeout = null,
                }
            );
        }
#pragma warning disable CA1031 // the last catch of the program: everything becomes an exit code and a sentence
        catch (Exception failure)
#pragma warning restore CA1031
        {
            return (int)Failure.Report(failure, desk, json: args.TakeWhile(a => a != "--").Contains("--json"));
        }
    }

    private static Command Root(Desk desk) =>
        new(
            "handhold",
            "How slow can you go by hand, and how many frames bring a sharp one home? Handhold learns it from frames that you shot and judged. "
                + "Start with `handhold demo`. What it prints is guidance from a test of yours, not a measurement standard."
        )
        {
            FitVerb.Build(desk),
            RateVerb.Build(desk),
            ExposureVerb.Build(desk),
            SlowestVerb.Build(desk),
            FramesVerb.Build(desk),
            CompareVerb.Build(desk),
            PlotVerb.Build(desk),
            CardVerb.Build(desk),
            DemoVerb.Build(desk),
            SimulateVerb.Build(desk),
            KeptVerb.Build(desk),
            DaysVerb.Build(desk),
            ImportVerb.Build(desk),
            new HelpOption(),
            new VersionOption(),
        };

    private static void Check(ParseResult parsed)
    {
        var command = parsed.CommandResult.Command;
        var verb = command.Parents.Any() ? $"handhold {command.Name}" : "handhold";
        // An option that no verb knows looks like a table to it.
        var mistaken = parsed
            .Tokens.TakeWhile(t => t.Type != TokenType.DoubleDash)
            .FirstOrDefault(t => t is { Type: TokenType.Argument, Value: ['-', '-', _, ..] });
        if (mistaken is not null)
            throw Unknown(mistaken.Value);
        if (parsed.Errors is not [var first, ..])
            return;
        if (parsed.UnmatchedTokens is [var token, ..])
            throw Unknown(token);
        var message =
            verb == "handhold" ? $"Say what to do: {string.Join(", ", command.Subcommands.Select(c => c.Name))}."
            : first.SymbolResult is ArgumentResult { Argument.Name: var argument } ? $"{argument} is missing."
            : first.SymbolResult is CommandResult ? $"{Missing(parsed)} is missing."
            : first.SymbolResult is OptionResult option
                ? $"{option.Option.Name} {(option.Tokens.Count == 0 ? "needs a value" : "was given more than once")}."
            : first.Message;
        throw Refused(message);

        UsageException Unknown(string token) => Refused($"`{token}` means nothing to `{verb}`.", token);

        UsageException Refused(string message, string? value = null) => new(message, $"`{verb} --help` lists what can be asked.", value);
    }

    private static string Missing(ParseResult parsed) =>
        parsed.CommandResult.Command.Arguments.FirstOrDefault(argument => !parsed.Has(argument))?.Name ?? "TABLE";
}
