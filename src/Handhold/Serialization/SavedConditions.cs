using System.Collections.Immutable;
using System.Text.Json;

namespace Handhold.Serialization;

/// <summary>Conditions as JSON: what was recorded, under the names of columns.</summary>
internal static class SavedConditions
{
    /// <summary>The columns in which all cells agree.</summary>
    internal static ImmutableHashSet<string> Shared(ImmutableArray<FrameCell> cells) =>
        [.. cells[0].Conditions.Recorded.Where(column => cells.All(cell => cell.Conditions[column] == cells[0].Conditions[column]))];

    /// <summary>Writes the columns that <paramref name="wanted"/> picks.</summary>
    internal static void Write(Utf8JsonWriter json, Conditions conditions, Func<string, bool> wanted)
    {
        json.WriteStartObject("conditions");
        foreach (var column in conditions.Recorded.Where(wanted))
        {
            json.WritePropertyName(column);
            if (IsNumber(column))
                json.WriteRawValue(conditions[column]!);
            else
                json.WriteStringValue(conditions[column]);
        }

        json.WriteEndObject();
    }

    /// <summary>The conditions of <paramref name="shared"/> and those that stand here.</summary>
    internal static Conditions Read(JsonPlace place, Conditions shared)
    {
        try
        {
            return place.Members().Aggregate(shared, (conditions, member) => With(conditions, member.Name, member.Value));
        }
        catch (CellException impossible)
        {
            throw place.Impossible(impossible);
        }
    }

    private static bool IsNumber(string column) =>
        column
            is "burst_position"
                or "order"
                or "focal_mm"
                or "crop"
                or "focal_eq_mm"
                or "pixel_um"
                or "stabiliser_stops"
                or "magnification"
                or "subject_distance_m"
                or "subject_speed_mm_s";

    private static Conditions With(Conditions conditions, string column, JsonPlace value) =>
        column switch
        {
            "photographer" => conditions with { Photographer = value.Text() },
            "setup" => conditions with { Setup = value.Text() },
            "criterion" => conditions with { Criterion = new(value.Text()) },
            "judge" => conditions with { Judge = value.Text() },
            "cause" => conditions with { Cause = value.Text() },
            "session" => conditions with { Session = value.Text() },
            "burst" => conditions with { Burst = value.Text() },
            "burst_position" => conditions with { BurstPosition = value.Count() },
            "order" => conditions with { Order = value.Number() },
            "focal_mm" => conditions with { FocalLength = value.Number() },
            "crop" => conditions with { Crop = value.Number() },
            "focal_eq_mm" => conditions with { EquivalentFocalLength = value.Number() },
            "pixel_um" => conditions with { PixelPitch = value.Number() },
            "stabiliser_stops" => conditions with { StabiliserStops = value.Number() },
            "stabiliser_mode" => conditions with { StabiliserMode = value.Text() },
            "support" => conditions with { Support = value.Text() },
            "magnification" => conditions with { Magnification = value.Number() },
            "subject_distance_m" => conditions with { SubjectDistance = value.Number() },
            "subject_motion" => conditions with { SubjectMotion = value.Text() },
            "subject_speed_mm_s" => conditions with { SubjectSpeed = value.Number() },
            _ => conditions with { Others = conditions.Others.SetItem(column, value.Text()) },
        };
}
