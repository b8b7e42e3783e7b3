using System.Collections.Immutable;
using Handhold.Curves;
using Handhold.Kernels;

namespace Handhold.Fitting;

/// <summary>A finished curve from its posterior's parts.</summary>
internal static class CurveAssembly
{
    internal static KeeperCurve Make(
        KeeperModel model,
        CurveRows rows,
        AsymptoteWalk asymptotes,
        CurvePosteriorBuilder builder,
        Func<CurveShape, (KeeperCurve, KeeperCurve, KeeperCurve)> otherPriors,
        bool alone
    )
    {
        CurvePosterior posterior = new(
            builder.Atoms(HalfPointKind.Habitual),
            builder.Atoms(HalfPointKind.AnotherDay),
            builder.Atoms(HalfPointKind.SameDay),
            AsymptoteSpline.Cells(asymptotes.Ceilings, loss => 1 - loss, () => asymptotes.Marginal(n => n.CeilingNode)),
            AsymptoteSpline.Cells(asymptotes.Floors, loss => loss, () => asymptotes.Marginal(n => n.FloorNode))
        );
        var parameters = Parameters(model, rows.HalfPoint, asymptotes, builder, posterior);
        var shape = MedianShape(model, parameters);
        var (logLikelihood, deviance) = Fit(shape, model.Judging, rows.Data);
        Lazy<ImmutableArray<ExpectedCount>> expected = new(() => LeaveOneOut.Of(model, rows));
        return new(
            rows.Key,
            rows.Data,
            model,
            rows.HalfPoint,
            parameters,
            new(() => CurveStatuses.Of(model, rows, parameters, expected.Value))
        )
        {
            Expected = expected,
            AsRejects = rows.AsRejects,
            TestedDays =
                model.Luck == LuckKind.None ? null : new(() => TermSample.OfDays(alone ? model : OtherPriors.Held(model, shape), rows)),
            LogLikelihood = logLikelihood,
            Deviance = deviance,
            Posterior = posterior,
            MedianShape = shape,
            OtherPriors = new(() => otherPriors(shape)),
        };
    }

    private static ImmutableArray<ParameterSummary> Parameters(
        KeeperModel model,
        NormalPrior halfPoint,
        AsymptoteWalk asymptotes,
        CurvePosteriorBuilder builder,
        CurvePosterior posterior
    )
    {
        var parameters = ImmutableArray.CreateBuilder<ParameterSummary>();
        parameters.Add(HalfPoint(posterior, halfPoint, model.Level));
        var (start, step, logs) = builder.Steepness();
        var ln2 = Math.Log(2);
        parameters.Add(Grid("log2b", start / ln2, step / ln2, logs, x => x, model.Level, model.Priors.Steepness.ToString()));
        if (asymptotes.Ceilings is { } ceilings)
        {
            var (first, logCeiling) = asymptotes.Marginal(n => n.CeilingNode);
            parameters.Add(
                Grid(
                    "ceiling",
                    ceilings.At(first),
                    ceilings.Step,
                    logCeiling,
                    t => 1 - ceilings.Loss(t),
                    model.Level,
                    $"1 - {model.Priors.CeilingLoss}",
                    falling: true
                )
            );
        }

        if (asymptotes.Floors is { } floors)
        {
            var (first, logFloor) = asymptotes.Marginal(n => n.FloorNode);
            parameters.Add(Grid("floor", floors.At(first), floors.Step, logFloor, floors.Loss, model.Level, model.Priors.Floor.ToString()));
        }

        if (model.Luck == LuckKind.Normal)
        {
            parameters.Add(
                Luck("sessionLuck", model.Priors.SessionLuck, builder.SessionLuckStep, builder.Luck(ofSession: true), model.Level)
            );
            parameters.Add(Luck("burstLuck", model.Priors.BurstLuck, builder.BurstLuckStep, builder.Luck(ofSession: false), model.Level));
        }

        return parameters.ToImmutable();
    }

    private static ParameterSummary HalfPoint(CurvePosterior posterior, NormalPrior prior, double level)
    {
        var (mean, square) = (0.0, 0.0);
        foreach (var atom in posterior.HabitualAtoms)
        {
            var (start, step, masses) = atom.HalfPoint.Nodes();
            for (var i = 0; i < masses.Length; i++)
            {
                var (weight, t) = (atom.Weight * masses.Span[i], start + i * step);
                mean += weight * t;
                square += weight * t * t;
            }
        }

        HalfPointMixture mixture = new(posterior.HabitualAtoms);
        CredibleInterval interval = new(mixture.Quantile((1 - level) / 2), mixture.Quantile((1 + level) / 2), level);
        return new("tau0", mixture.Quantile(0.5), mean, Math.Sqrt(Math.Max(0, square - mean * mean)), interval, prior.ToString());
    }

    private static ParameterSummary Luck(string name, HalfNormalPrior prior, double step, double[] logs, double level) =>
        Grid(name, 0, step, logs, s => s, level, prior.ToString(), even: true);

    private static ParameterSummary Grid(
        string name,
        double start,
        double step,
        double[] logs,
        Func<double, double> map,
        double level,
        string prior,
        bool falling = false,
        bool even = false
    )
    {
        var top = logs.Max();
        var (mass, first, second) = (0.0, 0.0, 0.0);
        for (var i = 0; i < logs.Length; i++)
        {
            var weight = Math.Exp(logs[i] - top) * (even && i == 0 ? 0.5 : 1);
            var value = map(start + i * step);
            mass += weight;
            first += weight * value;
            second += weight * value * value;
        }

        SmoothMarginal marginal = new(start, step, logs, even);
        var mean = even ? marginal.Mean : first / mass; // an even density's mean is an odd integrand: no trapezoid sum
        var (low, high) = (map(marginal.Quantile((1 - level) / 2)), map(marginal.Quantile((1 + level) / 2)));
        CredibleInterval interval = falling ? new(high, low, level) : new(low, high, level);
        return new(name, map(marginal.Quantile(0.5)), mean, Math.Sqrt(Math.Max(0, second / mass - mean * mean)), interval, prior);
    }

    private static CurveShape MedianShape(KeeperModel model, ImmutableArray<ParameterSummary> parameters)
    {
        double Median(string name, double otherwise) => parameters.FirstOrDefault(p => p.Name == name)?.Median ?? otherwise;
        return new()
        {
            HalfPoint = Median("tau0", 0),
            Steepness = Math.Pow(2, Median("log2b", 0)),
            Ceiling = model.Ceiling.Value ?? Median("ceiling", 1),
            Floor = model.Floor.Value ?? Median("floor", 0),
        };
    }

    private static (double LogLikelihood, double Deviance) Fit(CurveShape shape, Judging judging, CurveData data)
    {
        var held = new Shape(shape.Steepness, shape.Ceiling, shape.Floor).Judged(judging);
        double[] x = [.. data.Speeds.Select(s => s.Exposure.Log2Seconds)];
        double[] frames = [.. data.Speeds.Select(s => (double)s.Frames)];
        double[] keepers = [.. data.Speeds.Select(s => (double)s.Keepers)];
        var logLikelihood = FramesLikelihood.LogLikelihood(held, shape.HalfPoint, x, frames, keepers);
        var saturated = data.Speeds.Sum(s => Part(s.Keepers, s.Frames) + Part(s.Frames - s.Keepers, s.Frames));
        return (logLikelihood, 2 * (saturated - logLikelihood));

        static double Part(double count, double frames) => count == 0 ? 0 : count * Math.Log(count / frames);
    }
}
