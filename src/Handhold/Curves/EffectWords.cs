using System.Collections.Immutable;

namespace Handhold.Curves;

/// <summary>Terms and what they cost or buy, as photographers say it.</summary>
internal static class EffectWords
{
    /// <summary>What changes, then where all else stands.</summary>
    /// <param name="column">The column, such as <c>stabiliser=lens</c>.</param>
    /// <param name="reference">The level it is measured against; null for a number.</param>
    /// <param name="at">Where other columns stand, and how far this one goes.</param>
    /// <param name="isLinear">Whether a number's change is for one unit.</param>
    internal static ImmutableArray<string> Of(
        string column,
        string? reference,
        ImmutableArray<KeyValuePair<string, double>> at,
        bool isLinear
    )
    {
        var others = at.ToDictionary();
        var what = What(column.Split('=', 2), reference, others, isLinear);
        return [what, .. others.Select(Where)];
    }

    /// <summary>Where the terms stand: <c>stabiliser off, magnification 0.02</c>.</summary>
    internal static string Under(IEnumerable<CurveTerm> terms, Conditions conditions) =>
        string.Join(", ", terms.Select(term => Stated(term, conditions)).OfType<string>());

    private static string What(string[] term, string? reference, Dictionary<string, double> at, bool isLinear)
    {
        switch (term)
        {
            case ["focal"]:
                return "Focal length doubled" + (at.Remove("focal_eq_mm", out var focal) ? Number($" to {focal:0.#} mm") : "");
            case ["stabiliser", ..]:
                var rated = at.Remove("stabiliser_stops", out var stops);
                return (term is [_, var mode] ? $"Stabiliser {mode} instead of off" : "Stabiliser")
                    + (
                        rated ? Number($", {stops:0.##} rated stops")
                        : term.Length == 1 && isLinear ? ", each rated stop"
                        : ""
                    );
            case ["magnification"]:
                return Number($"Magnification {(at.Remove("magnification", out var closest) ? closest : 1):0.##} instead of far away");
            case ["subjectSpeed"]:
                at.Remove("subject_speed_mm_s", out var speed);
                return Number($"Subject at {speed:0.##} mm/s instead of still");
            case ["firstFrame"]:
                return "First frame of a burst";
            case ["burst_position"]:
                return "Each frame further into a burst";
            case [var column, var level]:
                return $"{(column == "subjectMotion" ? "Subject" : column)} {level}"
                    + (reference is null ? "" : $" instead of {reference}");
            default:
                return $"{term[0]}, each 1 more";
        }
    }

    private static string Where(KeyValuePair<string, double> at) =>
        at switch
        {
            { Key: "magnification", Value: 0 } => "far away",
            { Key: "magnification", Value: 1 } => "at life size",
            _ => Number($"at {at.Key} {at.Value:0.##}"),
        };

    private static string? Stated(CurveTerm term, Conditions conditions)
    {
        var columns = term.Name == "stabiliser" ? term.Columns.Reverse() : term.Columns;
        if (columns.FirstOrDefault(c => conditions[c] is not null) is not { } column)
            return null;
        var value = conditions[column];
        return column switch
        {
            "stabiliser_stops" => $"stabiliser with {value} rated stops",
            "subject_distance_m" => $"subject {value} m away",
            "focal_eq_mm" or "focal_mm" => $"focal length {value} mm",
            "subject_motion" => $"subject {value}",
            "subject_speed_mm_s" => $"subject at {value} mm/s",
            "burst_position" => $"frame {value} of a burst",
            _ => $"{term.Name} {value}",
        };
    }

    private static string Number(FormattableString text) => FormattableString.Invariant(text);
}
