using System.Collections.Immutable;

namespace Handhold.Models;

/// <summary>What the conditions of a frame do to half point and steepness, as weights of the effects.</summary>
/// <remarks>
/// tau_rot = tau0 + Σ turning · effects; tau_trans = translation - log2 hand speed; independent motions add in quadrature,
/// tau = -1/2 log2(2^(-2 tau_rot) + 2^(-2 tau_trans) + 2^(-2 tau_subj)) + Σ shifting · effects; log b grows by Σ steepening · effects.
/// </remarks>
/// <param name="Turning">Weights within the rotation of the camera.</param>
/// <param name="Shifting">Weights of plain shifts of the half point.</param>
/// <param name="Steepening">Weights on the logarithm of the steepness.</param>
/// <param name="Translation">log2(permitted blur / magnification), mm; null where translation of the hands does not count.</param>
/// <param name="HandSpeed">The effect that is log2 of the hands' speed, mm/s.</param>
/// <param name="Subject">tau_subj, log2 seconds; null for a still subject.</param>
internal sealed record Setting(
    ImmutableArray<(int Effect, double Weight)> Turning,
    ImmutableArray<(int Effect, double Weight)> Shifting,
    ImmutableArray<(int Effect, double Weight)> Steepening,
    double? Translation,
    int HandSpeed,
    double? Subject
)
{
    /// <summary>The half point, log2 seconds.</summary>
    internal double HalfPoint(double tau0, ReadOnlySpan<double> effects)
    {
        var rotation = tau0 + Sum(Turning, effects);
        var shift = Sum(Shifting, effects);
        if (Translation is null && Subject is null)
            return rotation + shift;
        var slowest = rotation;
        var (translation, subject) = (Translation is { } far ? far - effects[HandSpeed] : (double?)null, Subject);
        slowest = Math.Min(slowest, Math.Min(translation ?? slowest, subject ?? slowest));
        var sum = Blur(rotation) + (translation is { } t ? Blur(t) : 0) + (subject is { } s ? Blur(s) : 0);
        return slowest - 0.5 * Math.Log2(sum) + shift;

        double Blur(double tau) => Math.Pow(2, 2 * (slowest - tau));
    }

    /// <summary>Of all that blurs, the share of the rotation: how far the half point follows it.</summary>
    internal double RotationShare(double tau0, ReadOnlySpan<double> effects) =>
        Translation is null && Subject is null
            ? 1
            : Math.Pow(2, 2 * (HalfPoint(tau0, effects) - Sum(Shifting, effects) - tau0 - Sum(Turning, effects)));

    /// <summary>The motions alone; null where rotation is the only one.</summary>
    internal Setting? Motion => Translation is null && Subject is null ? null : this with { Shifting = [], Steepening = [] };

    /// <summary>How much of an effect enters the rotation, and how much the half point, whatever moved.</summary>
    internal (double Turning, double Shifting) Weight(int effect)
    {
        return (Of(Turning), Of(Shifting));

        double Of(ImmutableArray<(int Effect, double Weight)> weights) => weights.Where(w => w.Effect == effect).Sum(w => w.Weight);
    }

    /// <summary>Growth of the natural logarithm of the steepness.</summary>
    internal double Steeper(ReadOnlySpan<double> effects) => Sum(Steepening, effects);

    internal static double Sum(ImmutableArray<(int Effect, double Weight)> weights, ReadOnlySpan<double> effects)
    {
        var sum = 0.0;
        foreach (var (effect, weight) in weights)
            sum += weight * effects[effect];
        return sum;
    }

    public bool Equals(Setting? other) =>
        other is not null
        && Turning.SequenceEqual(other.Turning)
        && Shifting.SequenceEqual(other.Shifting)
        && Steepening.SequenceEqual(other.Steepening)
        && Translation == other.Translation
        && Subject == other.Subject;

    public override int GetHashCode() => HashCode.Combine(Turning.Length, Shifting.Length, Translation, Subject);
}
