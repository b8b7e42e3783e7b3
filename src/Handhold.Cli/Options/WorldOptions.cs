using System.Collections.Immutable;
using System.CommandLine;
using Handhold.Randomness;
using Handhold.Simulation;

namespace Handhold.Cli;

/// <summary>The truth that invented frames are drawn from.</summary>
internal sealed class WorldOptions
{
    private readonly Option<string> _half = Option("--half", "SPEED", "Half-keeper speed of the curve, such as 1/30.");
    private readonly Option<string> _steepness = Option("--steepness", "B", "Logits a stop [1.6].");
    private readonly Option<string> _ceiling = Option("--ceiling", "P", "Keeper rate of very fast frames [0.97].");
    private readonly Option<string> _floor = Option("--floor", "P", "Keeper rate of very slow frames [0].");
    private readonly Option<string> _sessionLuck = Option("--session-luck", "STOPS", "Standard deviation of a day's luck [0.2].");
    private readonly Option<string> _burstLuck = Option("--burst-luck", "STOPS", "Standard deviation of a burst's luck [0.15].");
    private readonly Option<bool> _motion = new("--motion")
    {
        Description = "Hands in motion instead of a curve: drift and tremor about two axes, focus misses, a subject that moves at times.",
    };
    private readonly Option<string> _focal = Option("--focal", "MM", "With --motion: equivalent focal length [50].");
    private readonly Option<string> _drift = Option("--drift", "DEG/S", "With --motion: speed of the slow drift about each axis [0.7].");
    private readonly Option<string> _tremor = Option("--tremor", "DEG/S", "With --motion: speed of the tremor about each axis [0.7].");
    private readonly Option<string> _focusMisses = Option(
        "--focus-misses",
        "P",
        "With --motion: share of frames that focus misses [0.02]."
    );
    private readonly Option<string> _subjectMoves = Option(
        "--subject-moves",
        "P",
        "With --motion: share of frames in which the subject moves [0]."
    );
    private readonly Option<string> _subjectSpeed = Option(
        "--subject-speed",
        "MM/S",
        "With --motion: speed of the moving subject's image on the frame [1]."
    );

    public ImmutableArray<Option> All => [.. Curve, _sessionLuck, _burstLuck, _motion, .. Motion];

    private ImmutableArray<Option> Curve => [_half, _steepness, _ceiling, _floor];

    private ImmutableArray<Option> Motion => [_focal, _drift, _tremor, _focusMisses, _subjectMoves, _subjectSpeed];

    /// <summary>A saved fit is the truth already.</summary>
    public void RefuseAll(ParseResult given) => Refuse(given, All, "belongs to a truth of its own, and a saved fit is given");

    public Func<ShootPlan, RandomStream, FrameTable> Shooter(ParseResult given)
    {
        var (session, burst) = (given.ReadOr(_sessionLuck, NotNegative, 0.2), given.ReadOr(_burstLuck, NotNegative, 0.15));
        if (given.GetValue(_motion))
        {
            Refuse(given, Curve, "belongs to a curve, and --motion knows none");
            return new ShakyHands
            {
                EquivalentFocalLength = given.ReadOr(_focal, Positive, 50),
                Drift = given.ReadOr(_drift, NotNegative, 0.7),
                Tremor = given.ReadOr(_tremor, NotNegative, 0.7),
                FocusMisses = given.ReadOr(_focusMisses, Reading.ShareOrEnd, 0.02),
                SubjectMoves = given.ReadOr(_subjectMoves, Reading.ShareOrEnd, 0),
                SubjectSpeed = given.ReadOr(_subjectSpeed, NotNegative, 1),
                SessionLuck = session,
                BurstLuck = burst,
            }.Shoot;
        }

        Refuse(given, Motion, "needs --motion");
        var (ceiling, floor) = (given.ReadOr(_ceiling, Reading.ShareOrEnd, 0.97), given.ReadOr(_floor, Reading.ShareOrEnd, 0));
        if (!(floor < ceiling))
            throw new UsageException("The floor is not below the ceiling.", "Lower the floor or raise the ceiling.");
        var steepness = given.ReadOr(_steepness, Positive, 1.6);
        if (0.5 <= floor || 0.5 >= ceiling)
            throw new UsageException(
                "Half of the frames are keepers nowhere between this floor and ceiling.",
                "Give a ceiling above 0.5 and a floor below."
            );
        var above = Math.Log((0.5 - floor) / (ceiling - 0.5)) / steepness; // stops from the half of the curve to half of the frames
        return new World
        {
            HalfPoint = given.Need(_half, Reading.Speed).Log2Seconds + above,
            Steepness = steepness,
            Ceiling = ceiling,
            Floor = floor,
            SessionLuck = session,
            BurstLuck = burst,
        }.Shoot;
    }

    private static void Refuse(ParseResult given, IEnumerable<Option> options, string why)
    {
        if (options.FirstOrDefault(given.Has) is { } option)
            throw new UsageException($"{option.Name} {why}.", "Leave one of them out.");
    }

    private static double Positive(string option, string text) =>
        Reading.Number(option, text) is var number and > 0
            ? number
            : throw Reading.Refused(option, text, "is not above 0.", "Give a positive number.");

    private static double NotNegative(string option, string text) =>
        Reading.Number(option, text) is var number and >= 0
            ? number
            : throw Reading.Refused(option, text, "is below 0.", "Give a number from 0 up.");

    private static Option<string> Option(string name, string help, string description) =>
        new(name) { HelpName = help, Description = description };
}
