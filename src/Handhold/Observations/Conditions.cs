using System.Collections.Immutable;

namespace Handhold;

/// <summary>Under what conditions frames were shot and judged. What was not recorded is null.</summary>
/// <remarks>Two sets of conditions are equal when everything recorded is. Every setter checks its range and throws <see cref="CellException"/>.</remarks>
public sealed partial record Conditions
{
    /// <summary>Nothing recorded.</summary>
    public static Conditions None { get; } = new();

    /// <summary>Who photographed.</summary>
    public string? Photographer
    {
        get;
        init => field = Label(value, "photographer");
    }

    /// <summary>Camera, lens and way of holding, by the photographer's own label.</summary>
    public string? Setup
    {
        get;
        init => field = Label(value, "setup");
    }

    /// <summary>What was called sharp.</summary>
    public Criterion? Criterion { get; init; }

    /// <summary>Who judged.</summary>
    public string? Judge
    {
        get;
        init => field = Label(value, "judge");
    }

    /// <summary>Why a frame is not sharp: <c>shake</c>, <c>subject</c>, <c>focus</c>, <c>unknown</c>.</summary>
    public string? Cause
    {
        get;
        init => field = Label(value, "cause");
    }

    /// <summary>The day or occasion whose luck the frames share.</summary>
    public string? Session
    {
        get;
        init => field = Label(value, "session");
    }

    /// <summary>The burst whose grip the frames share; a label within its session, photographer and setup.</summary>
    public string? Burst
    {
        get;
        init => field = Label(value, "burst");
    }

    /// <summary>Place in the burst, from 1.</summary>
    public int? BurstPosition
    {
        get;
        init => field = (int?)InRange(value, "burst_position", value >= 1, "a whole number from 1 up");
    }

    /// <summary>Order of shooting.</summary>
    public double? Order
    {
        get;
        init => field = InRange(value, "order", true, "a finite number");
    }

    /// <summary>Focal length in use, mm, above 0.</summary>
    public double? FocalLength
    {
        get;
        init => field = Positive(value, "focal_mm");
    }

    /// <summary>Crop factor, above 0: 43.27 mm over the sensor's diagonal.</summary>
    public double? Crop
    {
        get;
        init => field = Positive(value, "crop");
    }

    /// <summary>Focal length that gives the same view on 24 x 36 mm, mm, above 0; when null, focal length times crop.</summary>
    public double? EquivalentFocalLength
    {
        get;
        init => field = Positive(value, "focal_eq_mm");
    }

    /// <summary>Distance between pixels, µm, above 0.</summary>
    public double? PixelPitch
    {
        get;
        init => field = Positive(value, "pixel_um");
    }

    /// <summary>Rated stops of the stabiliser in use, from 0 up; 0 is off.</summary>
    public double? StabiliserStops
    {
        get;
        init => field = NotNegative(value, "stabiliser_stops");
    }

    /// <summary><c>off</c>, <c>lens</c>, <c>body</c>, <c>both</c>, <c>panning</c>.</summary>
    public string? StabiliserMode
    {
        get;
        init => field = Label(value, "stabiliser_mode");
    }

    /// <summary>What the photographer leaned on, a free label.</summary>
    public string? Support
    {
        get;
        init => field = Label(value, "support");
    }

    /// <summary>Image size over object size, from 0 up.</summary>
    public double? Magnification
    {
        get;
        init => field = NotNegative(value, "magnification");
    }

    /// <summary>Sensor to subject, m, above 0.</summary>
    public double? SubjectDistance
    {
        get;
        init => field = Positive(value, "subject_distance_m");
    }

    /// <summary><c>still</c>, <c>slight</c>, <c>brisk</c>, or the user's own.</summary>
    public string? SubjectMotion
    {
        get;
        init => field = Label(value, "subject_motion");
    }

    /// <summary>Speed of the subject across the frame, mm/s at the subject, from 0 up.</summary>
    public double? SubjectSpeed
    {
        get;
        init => field = NotNegative(value, "subject_speed_mm_s");
    }

    /// <summary>Everything else, by column name, in byte order.</summary>
    public ImmutableSortedDictionary<string, string> Others
    {
        get => _others.Values;
        init => _others = OtherColumns.Checked(value);
    }
}
