using System.Collections.Immutable;

namespace Handhold;

/// <summary>Levels of a column that vary about what they have in common, normally: each borrows from the others what its own frames lack.</summary>
/// <param name="Column">The column whose labels are the levels, such as <c>photographer</c> or <c>setup</c>.</param>
/// <param name="Part">What varies, unless it is a <see cref="Term"/>.</param>
public sealed record Varying(string Column, VaryingPart Part = VaryingPart.Intercept)
{
    /// <summary>
    /// A term of the curve whose effect varies, such as <c>stabiliser</c>, instead of height or slope: each of its columns by itself, or only the one that is named, such as
    /// <c>stabiliser=lens</c>. The same column may stand beside, for height and slope; in the posterior some column must.
    /// </summary>
    public string? Term { get; init; }

    /// <summary>
    /// Columns that a label belongs to, the outermost first: with <c>photographer</c>, a setup called tele is another one in each photographer's hands. Empty: a label
    /// means the same wherever it stands.
    /// </summary>
    public ImmutableArray<string> Within { get; init; } = [];

    /// <summary>All columns that tell the levels apart.</summary>
    internal ImmutableArray<string> Path => [.. Within, Column];
}
