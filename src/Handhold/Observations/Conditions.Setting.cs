using System.Globalization;

namespace Handhold;

public sealed partial record Conditions
{
    /// <summary>The same conditions but for one column, given as text in the way of tables.</summary>
    /// <param name="column">One of <see cref="ColumnNames"/>, or any other name.</param>
    /// <param name="value">The value; numbers with a decimal point. Null: not recorded.</param>
    /// <exception cref="CellException">The column holds numbers and this is none, or the number is out of range.</exception>
    public Conditions With(string column, string? value)
    {
        ArgumentException.ThrowIfNullOrWhiteSpace(column);
        return column switch
        {
            "photographer" => this with { Photographer = value },
            "setup" => this with { Setup = value },
            "criterion" => this with { Criterion = value is null ? null : new(value) },
            "judge" => this with { Judge = value },
            "cause" => this with { Cause = value },
            "session" => this with { Session = value },
            "burst" => this with { Burst = value },
            "burst_position" => this with { BurstPosition = Whole(column, value) },
            "order" => this with { Order = Number(column, value) },
            "focal_mm" => this with { FocalLength = Number(column, value) },
            "crop" => this with { Crop = Number(column, value) },
            "focal_eq_mm" => this with { EquivalentFocalLength = Number(column, value) },
            "pixel_um" => this with { PixelPitch = Number(column, value) },
            "stabiliser_stops" => this with { StabiliserStops = Number(column, value) },
            "stabiliser_mode" => this with { StabiliserMode = value },
            "support" => this with { Support = value },
            "magnification" => this with { Magnification = Number(column, value) },
            "subject_distance_m" => this with { SubjectDistance = Number(column, value) },
            "subject_motion" => this with { SubjectMotion = value },
            "subject_speed_mm_s" => this with { SubjectSpeed = Number(column, value) },
            _ => this with { Others = value is null ? Others.Remove(column) : Others.SetItem(column, value) },
        };
    }

    /// <summary>These conditions, and where they are silent those of <paramref name="others"/>.</summary>
    internal Conditions Or(Conditions others) =>
        ColumnNames
            .Concat(others.Others.Keys)
            .Where(column => this[column] is null && others[column] is not null)
            .Aggregate(this, (conditions, column) => conditions.With(column, others[column]));

    /// <summary>What all of these have in common.</summary>
    internal static Conditions Shared(IEnumerable<Conditions> all)
    {
        var conditions = all.Distinct().ToArray();
        return ColumnNames
            .Concat(conditions[0].Others.Keys)
            .Where(column => conditions.Any(c => c[column] != conditions[0][column]))
            .Aggregate(conditions[0], (shared, column) => shared.With(column, null));
    }

    private static double? Number(string column, string? value) =>
        value is null ? null
        : double.TryParse(value, NumberStyles.Float, CultureInfo.InvariantCulture, out var number) ? number
        : throw new CellException(column, $"'{value}' is no number.", "Write a number with a decimal point.");

    private static int? Whole(string column, string? value) =>
        Number(column, value) is not { } number ? null
        : double.IsInteger(number) && Math.Abs(number) < int.MaxValue ? (int)number
        : throw new CellException(column, $"'{value}' is no whole number.", "Write a whole number.");
}
