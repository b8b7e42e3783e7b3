using System.Collections.Immutable;
using System.CommandLine;

namespace Handhold.Cli;

/// <summary>Levels that are fitted together.</summary>
internal sealed class VaryOptions
{
    private readonly Option<string[]> _varies = new("--varies")
    {
        HelpName = "COLUMN=PART",
        Description =
            "With --estimator posterior or likelihood: labels of COLUMN vary about what they have in common, in their intercept (the half-keeper speed), "
            + "exposure (the steepness), both, or both-uncorrelated, and borrow from each other; may be given for several columns, and for what a term buys, "
            + "such as photographer=stabiliser, beside the rest.",
    };
    private readonly Option<string[]> _within = new("--within")
    {
        HelpName = "COLUMN=PARENT",
        Description =
            "Labels of COLUMN belong to one label of PARENT, such as setup=photographer: the same label elsewhere is another level.",
    };

    public ImmutableArray<Option> All => [_varies, _within];

    public string Name => _varies.Name;

    public bool AreGiven(ParseResult given) => given.Has(_varies);

    public ImmutableArray<Varying> Read(ParseResult given)
    {
        var parents = Parents(given);
        var varies = ImmutableArray.CreateBuilder<Varying>();
        foreach (var text in given.GetValue(_varies) ?? [])
        {
            var (column, part) = Reading.Pair(_varies.Name, text);
            Varying varying = ReadPart(part) is { } known ? new(column, known) : new(column) { Term = part };
            if (varies.Any(v => v.Column == column && (v.Term is null ? varying.Term is null : v.Term == varying.Term)))
                throw Reading.Refused(_varies.Name, text, $"lets {column} vary twice.", "Give each column once, and once for each term.");
            varies.Add(varying with { Within = Above(column, parents) });
        }

        foreach (var (column, parent) in parents)
            if (!varies.Any(v => v.Column == column || v.Within.Contains(column)))
                throw Reading.Refused(
                    _within.Name,
                    $"{column}={parent}",
                    $"is of no use: {column} does not vary.",
                    $"Add {_varies.Name} {column}=intercept."
                );
        return varies.ToImmutable();
    }

    /// <summary>Refuses parts that are neither known nor a term.</summary>
    public void CheckTerms(ImmutableArray<Varying> varies, Func<string, bool> isTerm)
    {
        foreach (var varying in varies)
            if (varying.Term is { } term && !isTerm(term.Split('=')[0]))
                throw Reading.Refused(
                    _varies.Name,
                    $"{varying.Column}={term}",
                    "names nothing that can vary.",
                    $"Write {_varies.Name} {varying.Column}=intercept, exposure, both, both-uncorrelated, or a term (--term), such as stabiliser."
                );
    }

    private static VaryingPart? ReadPart(string part) =>
        part switch
        {
            "intercept" => VaryingPart.Intercept,
            "exposure" => VaryingPart.Exposure,
            "both" => VaryingPart.Both,
            "both-uncorrelated" => VaryingPart.BothUncorrelated,
            _ => null,
        };

    private Dictionary<string, string> Parents(ParseResult given)
    {
        Dictionary<string, string> parents = new(StringComparer.Ordinal);
        foreach (var text in given.GetValue(_within) ?? [])
        {
            var (column, parent) = Reading.Pair(_within.Name, text);
            if (!parents.TryAdd(column, parent))
                throw Reading.Refused(
                    _within.Name,
                    text,
                    $"puts {column} within two columns.",
                    "Give each column one parent; that may have one in turn."
                );
            if (Above(column, parents).Contains(column))
                throw Reading.Refused(_within.Name, text, $"puts {column} within itself.", "Leave it out.");
        }

        return parents;
    }

    /// <summary>The parent's parents first.</summary>
    private static ImmutableArray<string> Above(string column, Dictionary<string, string> parents)
    {
        List<string> above = [];
        while (parents.TryGetValue(column, out var parent) && !above.Contains(parent))
            above.Insert(0, column = parent);
        return [.. above];
    }
}
