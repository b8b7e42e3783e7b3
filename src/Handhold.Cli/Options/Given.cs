using System.CommandLine;

namespace Handhold.Cli;

/// <summary>What was given on the command line.</summary>
internal static class Given
{
    public static bool Has(this ParseResult given, Option option) => given.GetResult(option) is { Implicit: false };

    public static bool Has(this ParseResult given, Argument argument) => given.GetResult(argument) is { Tokens.Count: > 0 };

    /// <summary>The value as <paramref name="read"/> understands it; null when the option was not given.</summary>
    public static T? Read<T>(this ParseResult given, Option<string> option, Func<string, string, T> read)
        where T : class => given.GetValue(option) is { } text ? read(option.Name, text) : null;

    /// <summary>The same for values such as numbers.</summary>
    public static T? ReadValue<T>(this ParseResult given, Option<string> option, Func<string, string, T> read)
        where T : struct => given.GetValue(option) is { } text ? read(option.Name, text) : null;

    public static T ReadOr<T>(this ParseResult given, Option<string> option, Func<string, string, T> read, T otherwise)
        where T : struct => given.ReadValue(option, read) ?? otherwise;

    /// <summary>The value of an option that this question cannot do without.</summary>
    public static T Need<T>(this ParseResult given, Option<string> option, Func<string, string, T> read)
        where T : struct => given.ReadValue(option, read) ?? throw Missing(option.Name);

    public static UsageException Missing(string option) => new($"{option} is missing.", "The question cannot be answered without it.");

    public static void RefuseBoth(this ParseResult given, Option one, Option other)
    {
        if (given.Has(one) && given.Has(other))
            throw new UsageException($"{one.Name} and {other.Name} exclude each other.", "Give one of them.");
    }
}
