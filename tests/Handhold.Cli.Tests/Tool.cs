using System.Text.Json;

namespace Handhold.Cli.Tests;

/// <summary>The tool, run within the tests as a shell would run it with everything redirected.</summary>
internal sealed record Tool(string[] Args, int Code, string Output, string Error)
{
    /// <summary>Standard output as one JSON value and nothing beside it.</summary>
    public JsonElement Json
    {
        get
        {
            using var document = JsonDocument.Parse(Output);
            return document.RootElement.Clone();
        }
    }

    public static Tool Run(params string[] args) => RunWith("", args);

    public static Tool RunWith(string input, params string[] args)
    {
        using StringReader reader = new(input);
        using StringWriter output = new();
        using StringWriter error = new();
        var code = CommandLine.Run(args, reader, output, error);
        return new(args, code, output.ToString(), error.ToString());
    }
}
