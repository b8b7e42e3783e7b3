#:project ../src/Handhold.Plots/Handhold.Plots.csproj
using System.Globalization;
using System.IO;
using Handhold;
using Handhold.Plots;
using Handhold.Randomness;
using Handhold.Simulation;
using static Handhold.ShutterSpeed;

// # From shaking hands to a keeper curve
//
// **Question.** Hands shake; why should the share of sharp frames follow a smooth curve in the logarithm of the exposure, and where does it not?
//
// **Data.** Invented. A camera turns about two axes: slow drift, breath and sway between 0.05 and 3 Hz, and tremor near 8 Hz (hand tremor lies at 6 to 12 Hz: Lakie and others 2015, Journal of Physiology 593, 4411-4430).
// A frame is sharp when the path, on the frame behind a lens of 50 mm, stays within 0.03 mm, and focus did not miss. The sizes of the motions are for setting.

CultureInfo.CurrentCulture = CultureInfo.InvariantCulture;
ShakyHands hands = new()
{
    Drift = 0.7,
    Tremor = 0.7,
    FocusMisses = 0.02,
};
RandomStream chance = Seed.From(20250131).Stream(0);
ShutterSpeed[] speeds = [OneOver(320), OneOver(160), OneOver(80), OneOver(40), OneOver(20), OneOver(10), OneOver(5)];

// ## The rate at each speed
//
// While a path is straight its length is speed times time, and with two Gaussian axes P(sharp) = 1 - exp(-c² / (2 f² s² t²)), c the permitted blur, f the focal length, s the speed. Its logit falls by 1.9 a stop where half are sharp, by 1.4 on the slow side, and ever more steeply on the fast side.
// Real paths turn. Count twenty thousand frames at each speed; if the curve were logistic, the logit of rate / ceiling would fall by the same amount each stop.

const int Frames = 20_000;
double[] rates = [.. speeds.Select(at => hands.RateAt(at, Frames, chance))];
double Logit(double rate) => Math.Log(rate / (1 - hands.FocusMisses - rate));
for (int i = 0; i < speeds.Length; i++)
{
    string fall = i > 0 ? $"{Logit(rates[i - 1]) - Logit(rates[i]):0.00} logits below" : "";
    Console.WriteLine($"{speeds[i], 7}  {rates[i], 7:0.0%}  {fall}");
}

// Around half, where a test has its frames, a stop costs two to three logits: near enough to a straight line for 42 frames. At the ends it is no line. On the fast side all that is left is focus, the ceiling. On the slow side the tremor has gone through whole periods, every path is longer than
// permitted, and the rate goes to nothing faster than any logistic curve.
//
// ## A test, and the curve that is fitted to it
//
// Nobody shoots twenty thousand frames. Take six at each speed, in two bursts of three, and fit the keeper curve.

ShootPlan test = new()
{
    Speeds = [.. speeds],
    Bursts = 2,
    BurstOf = 3,
    Conditions = Conditions.None with { EquivalentFocalLength = 50, StabiliserMode = "off", Criterion = Criterion.Print },
};
KeeperCurve curve = KeeperModel.Default.Fit(hands.Shoot(test, Seed.From(20250131).Stream(1))).Only;
Console.WriteLine(curve.HalfKeeperExposure().Sentence);
for (int i = 0; i < speeds.Length; i++)
{
    RateEstimate found = curve.RateAt(speeds[i]).Rate!;
    bool inside = rates[i] >= found.Interval.Lower && rates[i] <= found.Interval.Upper;
    Console.WriteLine(
        $"{speeds[i], 7}  true {rates[i], 6:0.0%}  fitted {found.Mean, 6:0.0%}  interval {found.Interval.Lower:0.0%} to {found.Interval.Upper:0.0%}{(inside ? "" : "  misses")}"
    );
}
Directory.CreateDirectory("pictures");
KeeperCurvePlot.Draw(curve, new() { TargetRate = 0.8 }).SavePicture("pictures/shaking-hands.png", 900, 600);

// ![The curve fitted to 42 invented frames](pictures/shaking-hands.png)
//
// ## Exercise
//
// Let the subject move in a third of the frames, at 2 mm/s on the frame. At which speeds does the curve stop being logistic, and what does the fit make of it?
//
// ## Solution
//
// A subject at 2 mm/s crosses 0.03 mm in 1/67 s: from 1/60 s on a third of the frames is lost whatever the hands do. The true curve falls to two thirds there before shaking takes over: it has a shoulder, which no logistic curve has. Forty-two frames cannot show it; the fitted curve cuts the corner.
// `curve.Check()` says how far frames and curve lie apart, and the status `curveDoesNotFit` needs more frames than these to speak.

ShakyHands busy = hands with
{
    SubjectMoves = 1.0 / 3,
    SubjectSpeed = 2,
};
KeeperCurve shoulder = KeeperModel.Default.Fit(busy.Shoot(test, Seed.From(20250131).Stream(2))).Only;
foreach (ShutterSpeed at in speeds)
    Console.WriteLine($"{at, 7}  true {busy.RateAt(at, Frames, chance), 6:0.0%}  fitted {shoulder.RateAt(at).Rate!.Mean, 6:0.0%}");
