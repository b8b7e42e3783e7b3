using System.Collections.Immutable;
using System.Globalization;

namespace Handhold.Models;

/// <summary>Where a term of a linear predictor reads frames: a column of the table, or a built-in reading of several.</summary>
/// <param name="Name">The term.</param>
/// <param name="Columns">Columns it reads; a frame must have what it needs of them.</param>
/// <param name="Number">Its number, where it has one.</param>
/// <param name="Label">Its label, used where not every frame has a number.</param>
/// <param name="Reference">The level that the others are measured against, if present; otherwise the first in byte order.</param>
/// <param name="Unsaid">Its number in a question that does not state it; null: it must be stated.</param>
internal sealed record TermSource(
    string Name,
    ImmutableArray<string> Columns,
    Func<Conditions, double?> Number,
    Func<Conditions, string?> Label,
    string? Reference = null,
    double? Unsaid = null
)
{
    /// <summary>The terms with a meaning of their own, in their linear approximation.</summary>
    internal static ImmutableArray<TermSource> BuiltIn { get; } =
    [
        new(
            "focal",
            ["focal_eq_mm", "focal_mm", "crop"],
            c => c.EffectiveEquivalentFocalLength is { } focal ? Math.Log2(focal / 50) : null,
            _ => null
        ),
        new(
            "stabiliser",
            ["stabiliser_stops", "stabiliser_mode"],
            c => c.EffectiveStabiliserStops,
            c => c.StabiliserMode ?? (c.StabiliserStops == 0 ? "off" : null),
            "off"
        ),
        new(
            "magnification",
            ["magnification", "subject_distance_m", "focal_mm"],
            c => c.EffectiveMagnification is { } magnification ? Math.Log2(1 + magnification) : null,
            _ => null
        ),
        new("subjectMotion", ["subject_motion"], _ => null, c => c.SubjectMotion, "still"),
        new("firstFrame", ["burst_position"], c => c.BurstPosition is { } position ? (position == 1 ? 1 : 0) : null, _ => null, Unsaid: 0),
    ];

    internal static TermSource Of(string name) =>
        BuiltIn.FirstOrDefault(b => b.Name == name) ?? new(name, [name], c => ReadNumber(c[name]), c => c[name]);

    /// <summary>What frames of these conditions have of the term, as text; null where it was not recorded.</summary>
    internal string? Text(Conditions conditions) => Number(conditions)?.ToString("R", CultureInfo.InvariantCulture) ?? Label(conditions);

    private static double? ReadNumber(string? text) =>
        double.TryParse(text, NumberStyles.Float, CultureInfo.InvariantCulture, out var number) && double.IsFinite(number) ? number : null;
}
