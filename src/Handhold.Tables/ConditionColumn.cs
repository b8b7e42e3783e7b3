using System.Collections.Immutable;

namespace Handhold.Tables;

/// <summary>The conditions with this cell of the row set; unchanged when the cell is empty or wrong.</summary>
internal delegate Conditions SetCondition(Conditions conditions, in TableRow row, int index);

/// <summary>A column that becomes a property of <see cref="Conditions"/>.</summary>
internal sealed record ConditionColumn(string Name, bool IsText, SetCondition Set)
{
    public static ImmutableArray<ConditionColumn> All { get; } =
    [
        Text("photographer", (c, text) => c with { Photographer = text }),
        Text("setup", (c, text) => c with { Setup = text }),
        Text("criterion", (c, text) => c with { Criterion = new(text) }),
        Text("judge", (c, text) => c with { Judge = text }),
        Text("cause", (c, text) => c with { Cause = text }),
        Text("session", (c, text) => c with { Session = text }),
        Text("burst", (c, text) => c with { Burst = text }),
        new(
            "burst_position",
            false,
            (c, in row, i) => row.Whole(i) is { } place ? row.Try(i, () => c with { BurstPosition = place }, c) : c
        ),
        Number("order", (c, order) => c with { Order = order }),
        Number("focal_mm", (c, mm) => c with { FocalLength = mm }),
        Number("crop", (c, factor) => c with { Crop = factor }),
        Number("focal_eq_mm", (c, mm) => c with { EquivalentFocalLength = mm }),
        Number("pixel_um", (c, um) => c with { PixelPitch = um }),
        Number("stabiliser_stops", (c, stops) => c with { StabiliserStops = stops }),
        Text("stabiliser_mode", (c, text) => c with { StabiliserMode = text }),
        Text("support", (c, text) => c with { Support = text }),
        Number("magnification", (c, ratio) => c with { Magnification = ratio }),
        Number("subject_distance_m", (c, m) => c with { SubjectDistance = m }),
        Text("subject_motion", (c, text) => c with { SubjectMotion = text }),
        Number("subject_speed_mm_s", (c, speed) => c with { SubjectSpeed = speed }),
    ];

    private static ConditionColumn Text(string name, Func<Conditions, string, Conditions> set) =>
        new(name, true, (c, in row, i) => row.Text(i) is { } text ? set(c, text) : c);

    private static ConditionColumn Number(string name, Func<Conditions, double, Conditions> set) =>
        new(name, false, (c, in row, i) => row.Number(i) is { } number ? row.Try(i, () => set(c, number), c) : c);
}
