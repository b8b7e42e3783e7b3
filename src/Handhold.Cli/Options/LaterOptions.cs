using System.Collections.Immutable;
using System.CommandLine;

namespace Handhold.Cli;

/// <summary>Options that this version knows by name only, so that it can say so.</summary>
internal sealed class LaterOptions
{
    public ImmutableArray<Option> All { get; } =
    [.. new[] { "--varies", "--within" }.Select(name => new Option<string[]>(name) { Hidden = true })];

    public void Refuse(ParseResult given)
    {
        if (All.FirstOrDefault(given.Has) is { } option)
            throw new UsageException(
                $"{option.Name} is not in this version, which fits separate curves.",
                "Leave it out; --each splits the table by any column."
            );
    }
}
