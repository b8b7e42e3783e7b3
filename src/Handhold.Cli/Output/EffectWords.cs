namespace Handhold.Cli;

/// <summary>Terms and what they cost or buy, as photographers say it.</summary>
internal static class EffectWords
{
    /// <summary>What changes, and where all else stands.</summary>
    public static string Of(KeeperCurve curve, TermInStops effect)
    {
        var at = effect.At.ToDictionary();
        var what = What(curve, effect.Term.Split('=', 2), at);
        return string.Join(", ", at.Select(Where).Prepend(what));
    }

    /// <summary>Where the terms stand: <c>stabiliser off, magnification 0.02</c>.</summary>
    public static string Under(IEnumerable<LinearTerm> terms, Conditions conditions) =>
        string.Join(", ", terms.Select(term => Stated(term, conditions)).OfType<string>());

    private static string What(KeeperCurve curve, string[] term, Dictionary<string, double> at)
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
                        : term.Length == 1 && curve.Linear is not null ? ", each rated stop"
                        : ""
                    );
            case ["magnification"]:
                return Number($"Magnification {(at.Remove("magnification", out var closest) ? closest : 1):0.##} instead of far away");
            case ["subjectSpeed"]:
                at.Remove("subject_speed_mm_s", out var speed);
                return Number($"Subject at {speed:0.##} mm/s instead of still");
            case ["firstFrame"]:
                return "First frame of a burst";
            case [var column, var level]:
                var reference = curve.Terms.FirstOrDefault(t => t.Name == column)?.Levels.FirstOrDefault();
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

    private static string? Stated(LinearTerm term, Conditions conditions)
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
