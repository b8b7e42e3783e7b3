using System.Collections.Immutable;

namespace Handhold;

/// <summary>Under what conditions frames were shot and judged. What was not recorded is null.</summary>
public sealed record Conditions
{
    /// <summary>Nothing recorded.</summary>
    public static Conditions None { get; } = new();

    /// <summary>Who photographed.</summary>
    public string? Photographer { get; init; }

    /// <summary>Camera, lens and way of holding, by the photographer's own label.</summary>
    public string? Setup { get; init; }

    /// <summary>What was called sharp.</summary>
    public Criterion? Criterion { get; init; }

    /// <summary>Who judged.</summary>
    public string? Judge { get; init; }

    /// <summary>Why a frame is not sharp: <c>shake</c>, <c>subject</c>, <c>focus</c>, <c>unknown</c>.</summary>
    public string? Cause { get; init; }

    /// <summary>The day or occasion whose luck the frames share.</summary>
    public string? Session { get; init; }

    /// <summary>The burst whose grip the frames share; a label within its session, photographer and setup.</summary>
    public string? Burst { get; init; }

    /// <summary>Place in the burst, from 1.</summary>
    public int? BurstPosition { get; init; }

    /// <summary>Order of shooting.</summary>
    public double? Order { get; init; }

    /// <summary>Focal length in use, mm.</summary>
    public double? FocalLength { get; init; }

    /// <summary>Crop factor: 43.27 mm over the sensor's diagonal.</summary>
    public double? Crop { get; init; }

    /// <summary>Focal length that gives the same view on 24 x 36 mm, mm; when null, focal length times crop.</summary>
    public double? EquivalentFocalLength { get; init; }

    /// <summary>Distance between pixels, µm.</summary>
    public double? PixelPitch { get; init; }

    /// <summary>Rated stops of the stabiliser in use; 0 is off.</summary>
    public double? StabiliserStops { get; init; }

    /// <summary><c>off</c>, <c>lens</c>, <c>body</c>, <c>both</c>, <c>panning</c>.</summary>
    public string? StabiliserMode { get; init; }

    /// <summary>What the photographer leaned on, a free label.</summary>
    public string? Support { get; init; }

    /// <summary>Image size over object size.</summary>
    public double? Magnification { get; init; }

    /// <summary>Sensor to subject, m.</summary>
    public double? SubjectDistance { get; init; }

    /// <summary><c>still</c>, <c>slight</c>, <c>brisk</c>, or the user's own.</summary>
    public string? SubjectMotion { get; init; }

    /// <summary>Speed of the subject across the frame, mm/s at the subject.</summary>
    public double? SubjectSpeed { get; init; }

    /// <summary>Everything else, by column name.</summary>
    public ImmutableSortedDictionary<string, string> Others { get; init; } = ImmutableSortedDictionary<string, string>.Empty;
}
