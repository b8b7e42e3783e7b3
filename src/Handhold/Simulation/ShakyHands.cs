using Handhold.Randomness;

namespace Handhold.Simulation;

/// <summary>A photographer made of motion, not of a keeper curve: what a fitted curve must cope with when its model is not the truth.</summary>
/// <remarks>
/// The camera turns about two axes, each with slow drift (0.05 to 3 Hz) and tremor (a band about its frequency), sums of sinusoids of random phase. A
/// frame's blur is focal length times the diagonal of what the path covers while the shutter is open, plus, now and then, the travel of a moving subject. A
/// frame is sharp when its blur is within the permitted one and focus did not miss; a judge who errs has the last word.
/// Hand tremor lies at 6 to 12 Hz (Lakie and others 2015, Journal of Physiology 593, 4411-4430); the sizes are for setting and are judgement.
/// </remarks>
public sealed record ShakyHands
{
    private const int Waves = 12;
    private const int Looks = 48;

    /// <summary>Equivalent focal length, mm, positive.</summary>
    public double EquivalentFocalLength { get; init; } = 50;

    /// <summary>Blur that still passes, mm on a frame of 24 x 36 mm, positive.</summary>
    public double PermittedBlur { get; init; } = 0.03;

    /// <summary>Root mean square speed of the drift about each axis, degrees a second.</summary>
    public double Drift { get; init; } = 0.7;

    /// <summary>Root mean square speed of the tremor about each axis, degrees a second.</summary>
    public double Tremor { get; init; } = 0.7;

    /// <summary>Middle of the tremor's band, Hz, positive.</summary>
    public double TremorFrequency { get; init; } = 8;

    /// <summary>Standard deviation of a day's shift, stops.</summary>
    public double SessionLuck { get; init; }

    /// <summary>Standard deviation of a grip's shift, stops.</summary>
    public double BurstLuck { get; init; }

    /// <summary>Share of frames that focus misses, whatever the exposure.</summary>
    public double FocusMisses { get; init; } = 0.02;

    /// <summary>Share of frames in which the subject moves.</summary>
    public double SubjectMoves { get; init; }

    /// <summary>Speed of the moving subject's image, mm a second on the frame.</summary>
    public double SubjectSpeed { get; init; }

    /// <summary>How often verdicts are right.</summary>
    public Judging Judging { get; init; } = Judging.Perfect;

    /// <summary>Shoots and judges a plan: one row a frame.</summary>
    /// <param name="plan">What to shoot.</param>
    /// <param name="stream">Chance.</param>
    public FrameTable Shoot(ShootPlan plan, RandomStream stream)
    {
        ArgumentNullException.ThrowIfNull(plan);
        ArgumentNullException.ThrowIfNull(stream);
        return [.. plan.Sessions.SelectMany(session => Day(plan, session, SessionLuck * stream.Normal(), stream))];
    }

    /// <summary>Share of frames that are keepers, by counting frames of days and grips of their own; standard error below 1 / (2 √frames).</summary>
    /// <param name="at">The shutter speed.</param>
    /// <param name="frames">Frames to count, at least 1.</param>
    /// <param name="stream">Chance.</param>
    public double RateAt(ShutterSpeed at, int frames, RandomStream stream)
    {
        ArgumentOutOfRangeException.ThrowIfLessThan(frames, 1);
        ArgumentNullException.ThrowIfNull(stream);
        var keepers = 0;
        for (var frame = 0; frame < frames; frame++)
        {
            keepers += IsKeeper(at, SessionLuck * stream.Normal() + BurstLuck * stream.Normal(), stream) ? 1 : 0;
        }
        return keepers / (double)frames;
    }

    private FrameTable Day(ShootPlan plan, string session, double luck, RandomStream stream) =>
        plan.Day(
            session,
            s => BurstLuck * s.Normal(),
            (speed, grip, s) => s.Happens(IsKeeper(speed, luck + grip, s) ? Judging.Sensitivity : 1 - Judging.Specificity),
            stream
        );

    /// <summary>Chances of keepers at one speed on another day, by the luck that each of so many frames would have needed.</summary>
    internal ShootChance Shooting(ShutterSpeed at, int frames, RandomStream stream)
    {
        var needed = Enumerable.Range(0, frames).Select(_ => LuckNeeded(at, stream)).Order().ToArray();
        return new(
            luck =>
            {
                var first = Array.BinarySearch(needed, luck);
                var keepers = first < 0 ? ~first : first + 1;
                return ((double)keepers / frames, (double)(frames - keepers) / frames);
            },
            SessionLuck,
            BurstLuck,
            Width: 0.3
        );
    }

    private bool IsKeeper(ShutterSpeed speed, double luck, RandomStream stream) => LuckNeeded(speed, stream) <= luck;

    /// <summary>Stops of luck from which on the next frame is a keeper; infinite where focus misses or the subject alone blurs too much.</summary>
    private double LuckNeeded(ShutterSpeed speed, RandomStream stream)
    {
        var seconds = speed.Seconds;
        var shake = EquivalentFocalLength * Math.PI / 180 * double.Hypot(Covered(seconds, stream), Covered(seconds, stream));
        var subject = stream.Happens(SubjectMoves) ? SubjectSpeed * seconds : 0;
        return stream.Happens(FocusMisses) || subject >= PermittedBlur
            ? double.PositiveInfinity
            : Math.Log2(shake) - Math.Log2(PermittedBlur * PermittedBlur - subject * subject) / 2;
    }

    /// <summary>Degrees that a path about one axis covers within an exposure, from end to end.</summary>
    private double Covered(double seconds, RandomStream stream)
    {
        Span<double> frequencies = stackalloc double[Waves];
        Span<double> sizes = stackalloc double[Waves];
        Span<double> phases = stackalloc double[Waves];
        for (var i = 0; i < Waves; i++)
        {
            var slow = i < Waves / 2;
            // Drift evenly over the logarithm of its band, tremor within a sixth of its middle; amplitudes that give the speeds asked for.
            frequencies[i] = slow ? 0.05 * Math.Pow(60, stream.Uniform()) : TremorFrequency * (1 + (stream.Uniform() - 0.5) / 3);
            sizes[i] = (slow ? Drift : Tremor) * Math.Sqrt(2.0 / (Waves / 2)) / (2 * Math.PI * frequencies[i]);
            phases[i] = 2 * Math.PI * stream.Uniform();
        }
        var (low, high) = (double.PositiveInfinity, double.NegativeInfinity);
        for (var look = 0; look <= Looks; look++)
        {
            var (at, angle) = (seconds * look / Looks, 0.0);
            for (var i = 0; i < Waves; i++)
            {
                angle += sizes[i] * Math.Sin(2 * Math.PI * frequencies[i] * at + phases[i]);
            }
            (low, high) = (Math.Min(low, angle), Math.Max(high, angle));
        }
        return high - low;
    }
}
