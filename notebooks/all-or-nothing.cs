#:project ../src/Handhold.Plots/Handhold.Plots.csproj
using System.Globalization;
using System.IO;
using Handhold;
using Handhold.Plots;
using static Handhold.ShutterSpeed;

// # All or nothing
//
// **Question.** Every frame down to 1/60 s was a keeper, and none from 1/30 s on. Is the curve as steep as a wall?
//
// **Data.** Thirty invented frames, six at each of five speeds.

CultureInfo.CurrentCulture = CultureInfo.InvariantCulture;
FrameTable table =
[
    new(OneOver(250), 6, 6),
    new(OneOver(125), 6, 6),
    new(OneOver(60), 6, 6),
    new(OneOver(30), 6, 0),
    new(OneOver(15), 6, 0),
];

// ## Maximum likelihood
//
// Whatever the curve, a steeper one through the same gap makes these frames more probable: the likelihood has no maximum. The fit says so, and says what the frames do bound.

KeeperModel plain = KeeperModel.Default with
{
    Estimator = Estimator.Likelihood,
    Luck = LuckKind.None,
    Ceiling = Ceiling.One,
};
KeeperCurve likelihood = plain.Fit(table).Only;
foreach (Status status in likelihood.Statuses)
    Console.WriteLine(status.Message);

// ## Bias reduction
//
// Add half the logarithm of the determinant of the information to the log-likelihood (Firth 1993, Biometrika 80, 27-38). As the curve steepens, the frames say less and less about its place and slope, the determinant goes to zero and the penalty to minus infinity: the maximum is finite.
// It is an estimate for tables of this kind, not a belief: it knows nothing of hands.

KeeperCurve reduced = (plain with { Estimator = Estimator.BiasReduced }).Fit(table).Only;
foreach (Coefficient c in reduced.Linear!.Coefficients)
    Console.WriteLine($"{c.Name}: {c.Estimate:0.00}");
Console.WriteLine(reduced.HalfKeeperExposure().Sentence);

// ## A prior
//
// Steepness has a reason: it is how much a frame's luck varies, and that of hands is known roughly. The prior says 1.6 logits a stop, within a factor of two. Six frames a speed cannot tell 3 from 30; the prior can, and the posterior says how much of the answer is its own.

KeeperCurve posterior = KeeperModel.Default.Fit(table).Only;
foreach (ParameterSummary p in posterior.Parameters)
    Console.WriteLine($"{p.Name}: {p.Median:0.00} ({p.Interval.Lower:0.00} to {p.Interval.Upper:0.00}); prior {p.Prior}");
Console.WriteLine(posterior.HalfKeeperExposure().Sentence);
Directory.CreateDirectory("pictures");
KeeperCurvePlot.Draw(posterior).SavePicture("pictures/all-or-nothing.png", 900, 600);

// ![The posterior curve of thirty all-or-nothing frames](pictures/all-or-nothing.png)
//
// ## Exercise
//
// How many keepers at 1/30 s, and how many rejects at 1/60 s, make the likelihood finite?
//
// ## Solution
//
// Keepers among the six at 1/30 s alone do not: with all six of 1/60 s kept, the curve can still be a wall that stands on 1/30 s itself. One reject at 1/60 s and one keeper at 1/30 s do: a finite maximum needs a reject at a faster speed than some keeper.

foreach (var (at60, at30) in new[] { (6, 0), (6, 1), (5, 0), (5, 1) })
{
    FrameTable other = [new(OneOver(125), 6, 6), new(OneOver(60), 6, at60), new(OneOver(30), 6, at30), new(OneOver(15), 6, 0)];
    string steepness = plain.Fit(other).Only.Linear!.Coefficients[^1].Estimate is { } b ? $"{-b:0.00} logits a stop" : "no finite estimate";
    Console.WriteLine($"{at60} of 6 at 1/60 s, {at30} of 6 at 1/30 s: {steepness}");
}
