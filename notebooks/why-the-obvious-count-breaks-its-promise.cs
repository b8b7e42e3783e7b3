#:project ../src/Handhold.Plots/Handhold.Plots.csproj
using System.Globalization;
using System.IO;
using Handhold;
using Handhold.Plots;
using Handhold.Randomness;
using Handhold.Simulation;
using static Handhold.ShutterSpeed;

// # Why the obvious count breaks its promise
//
// **Question.** 21 % of the frames at this speed are keepers. One keeper with 90 % assurance: ten frames, since 0.79¹⁰ is below 0.1. Why do ten fail more often than once in ten?
//
// **Data.** Invented: a photographer whose numbers are known, so that promises can be checked exactly.

CultureInfo.CurrentCulture = CultureInfo.InvariantCulture;
World world = new()
{
    HalfPoint = OneOver(30).Log2Seconds,
    Steepness = 1.6,
    Ceiling = 0.97,
    SessionLuck = 0.35,
    BurstLuck = 0.6,
};
ShutterSpeed at = OneOver(15);
double rate = world.RateAt(at);
Console.WriteLine($"Keeper rate at {at} on another day: {rate:0.0%}");

// ## First leak: the frames share a grip
//
// Breath, footing and grip are the same for all frames of a burst. A burst in a bad moment is bad from end to end, so more frames of the same burst do not help as much as the count for independent frames believes.
// Below: frames the obvious count asks for, how often they bring the keeper home in one burst, and how often when each three frames get a fresh grip.

Console.WriteLine("promise  frames  kept in one burst  kept in bursts of 3");
foreach (double promise in new[] { 0.8, 0.9, 0.95, 0.99 })
{
    int frames = KnownRate.FramesNeeded(rate, correlation: 0, keepers: 1, promise).Frames!.Value;
    Console.WriteLine(
        $"{promise, 7:0%}  {frames, 6}  {world.ChanceOf(1, frames, at), 17:0.0%}  {world.ChanceOf(1, frames, at, burstsOf: 3), 19:0.0%}"
    );
}

// ## Second leak: the rate is not known
//
// The rate came out of a test. Six frames at seven speeds leave its curve open by a factor of two or more, and a plan from the best curve is right only if the best curve is. Test the photographer forty times, plan one keeper at 95 % for another day, once by the best curve as if known and frames independent,
// once by the library, which averages over the posterior and the luck of grip and day, and compute how often each plan is kept.

ShootPlan test = new()
{
    Speeds = [OneOver(320), OneOver(160), OneOver(80), OneOver(40), OneOver(20), OneOver(10), OneOver(5)],
    Conditions = Conditions.None with { EquivalentFocalLength = 50, StabiliserMode = "off", Criterion = Criterion.Print },
};
double[] promises = [0.8, 0.9, 0.95];
double[] obvious = new double[promises.Length],
    honest = new double[promises.Length];
int tests = 0;
for (int i = 0; i < 40; i++)
{
    FrameTable table = world.Shoot(test, Seed.From(20250131).Stream(i));
    KeeperCurve curve = (KeeperModel.Default with { PoolConditions = true }).Fit(table).Only;
    double? best = curve.MedianShape is { } shape
        ? new World
        {
            HalfPoint = shape.HalfPoint,
            Steepness = shape.Steepness,
            Ceiling = shape.Ceiling,
        }.RateAt(at)
        : null;
    int?[] plans = [.. promises.Select(p => curve.FramesNeeded(at, 1, p, new() { CheckPriors = false }).Frames)];
    if (best is not { } r || plans.Any(p => p is null))
        continue;
    tests++;
    for (int j = 0; j < promises.Length; j++)
    {
        obvious[j] += world.ChanceOf(1, KnownRate.FramesNeeded(r, 0, 1, promises[j]).Frames ?? 1000, at);
        honest[j] += world.ChanceOf(1, plans[j]!.Value, at);
    }
}
Console.WriteLine($"{tests} tests led to plans within the budget");
for (int j = 0; j < promises.Length; j++)
    Console.WriteLine(
        $"promised {promises[j]:0%}: the obvious count keeps {obvious[j] / tests:0.0%}, the library {honest[j] / tests:0.0%}"
    );

// One photographer is one photographer: this one has more luck of the grip than most, and the library, which believes 0.25 stops or so until bursts tell, keeps a little less than it says for him, and more for others. What holds is the average over photographers as the priors describe them; that is the law that the project's tests compute.
//
// ## Picture

FrameTable known = world.Shoot(test with { Bursts = 8 }, Seed.From(20250131).Stream(1000));
KeeperCurve after = (KeeperModel.Default with { PoolConditions = true }).Fit(known).Only;
Directory.CreateDirectory("pictures");
KeeperCountPlot.Draw(after, at, frames: 12, burstsOf: 3).SavePicture("pictures/obvious-count.png", 900, 600);

// ![Keepers of twelve frames, in one burst and in bursts of three](pictures/obvious-count.png)
//
// ## Exercise
//
// At a rate of 0.23 and a correlation of 0.2 between frames of a burst, how many frames does one keeper at 90 % take in one burst, and how many in bursts of three?
//
// ## Solution

foreach (int? burst in new int?[] { null, 3, 1 })
    Console.WriteLine(KnownRate.FramesNeeded(0.23, 0.2, keepers: 1, assurance: 0.9, burstsOf: burst).Sentence);
