using System.Collections.Immutable;
using Handhold.Curves;
using Handhold.Kernels;
using Handhold.Models;

namespace Handhold.Fitting;

/// <summary>A finished curve from the weighted points of its posterior.</summary>
internal static class TermAssembly
{
    internal static KeeperCurve Make(
        KeeperModel model,
        CurveRows rows,
        TermSample sample,
        Func<CurveShape, (KeeperCurve, KeeperCurve, KeeperCurve)> otherPriors
    )
    {
        TermPosterior posterior = new(sample.Moved, sample.Draws, sample.Sessions);
        var parameters = Parameters(
            model,
            posterior.Moved,
            (name, value, prior) => posterior.Values(value).Summary(name, model.Level, prior)
        );
        var conditions = posterior.Reference(rows.Data.Cells);
        var shape = MedianShape(posterior, posterior.Moved.Read(conditions));
        var (logLikelihood, deviance) = Fit(posterior, model.Judging, rows.Data.Cells);
        Lazy<ImmutableArray<ExpectedCount>> expected = new(() => LeaveOneOut.Of(model, rows));
        return new(
            rows.Key,
            rows.Data,
            model,
            sample.Moved.Tau0,
            parameters,
            new(() => TermStatuses.Of(model, rows.Data, posterior, parameters, sample.Sampling, expected.Value))
        )
        {
            Expected = expected,
            AsRejects = rows.AsRejects,
            TestedDays = model.Luck == LuckKind.None ? null : new(posterior),
            LogLikelihood = logLikelihood,
            Deviance = deviance,
            Term = posterior,
            Posterior = posterior.At(conditions),
            MedianShape = shape,
            Sampling = sample.Sampling,
            OtherPriors = new(() => otherPriors(shape)),
        };
    }

    /// <summary>What is known of the parameters.</summary>
    /// <param name="model">The model.</param>
    /// <param name="moved">Its terms.</param>
    /// <param name="summary">What is known of a number of each draw, by name and prior.</param>
    internal static ImmutableArray<ParameterSummary> Parameters(
        KeeperModel model,
        WhatMoved moved,
        Func<string, Func<TermDraw, double>, string, ParameterSummary> summary
    )
    {
        var priors = model.Priors;
        var parameters = ImmutableArray.CreateBuilder<ParameterSummary>();
        Add("tau0", d => d.Tau0, moved.Tau0);
        Add("log2b", d => d.LogSteepness / Math.Log(2), priors.Steepness);
        if (model.Ceiling.Value is null)
            Add("ceiling", d => d.Ceiling, $"1 - {priors.CeilingLoss}");
        if (model.Floor.Value is null)
            Add("floor", d => d.Floor, priors.Floor);
        for (var j = 0; j < moved.Effects.Length; j++)
        {
            var place = j;
            Add(moved.Effects[j].Name, d => d.Effects[place], moved.Prior(j));
        }

        if (model.Luck == LuckKind.Normal)
        {
            Add("sessionLuck", d => d.SessionSd, priors.SessionLuck);
            Add("burstLuck", d => d.BurstSd, priors.BurstLuck);
        }

        return parameters.ToImmutable();

        void Add(string name, Func<TermDraw, double> value, object prior) => parameters.Add(summary(name, value, prior.ToString()!));
    }

    /// <summary>The curve at the medians, under the conditions of a report.</summary>
    internal static CurveShape MedianShape(TermPosterior posterior, Setting reference) =>
        new()
        {
            HalfPoint = posterior.Values(d => reference.HalfPoint(d.Tau0, d.Effects.AsSpan())).Quantile(0.5),
            Steepness = Math.Exp(posterior.Values(d => d.LogSteepness + reference.Steeper(d.Effects.AsSpan())).Quantile(0.5)),
            Ceiling = posterior.Values(d => d.Ceiling).Quantile(0.5),
            Floor = posterior.Values(d => d.Floor).Quantile(0.5),
        };

    /// <summary>At the medians, without luck, against the saturated model on cells pooled by exposure and terms.</summary>
    private static (double LogLikelihood, double Deviance) Fit(TermPosterior posterior, Judging judging, ImmutableArray<FrameCell> cells)
    {
        var moved = posterior.Moved;
        double Median(Func<TermDraw, double> value) => posterior.Values(value).Quantile(0.5);
        var (tau0, logB) = (Median(d => d.Tau0), Median(d => d.LogSteepness));
        var (ceiling, floor) = (judging.Called(Median(d => d.Ceiling)), judging.Called(Median(d => d.Floor)));
        double[] effects = [.. Enumerable.Range(0, moved.Effects.Length).Select(j => Median(d => d.Effects[j]))];
        var (logLikelihood, saturated) = (0.0, 0.0);
        foreach (var group in cells.GroupBy(c => (Setting: moved.Read(c.Conditions), c.Exposure)))
        {
            double frames = group.Sum(c => c.Frames);
            double keepers = group.Sum(c => c.Keepers);
            var b = Math.Exp(logB + group.Key.Setting.Steeper(effects));
            var eta = b * (group.Key.Setting.HalfPoint(tau0, effects) - group.Key.Exposure.Log2Seconds);
            var (keep, miss) = Elementary.Capped(eta, ceiling, floor);
            logLikelihood += Part(keepers, keep) + Part(frames - keepers, miss);
            saturated += Part(keepers, keepers / frames) + Part(frames - keepers, (frames - keepers) / frames);
        }

        return (logLikelihood, 2 * (saturated - logLikelihood));

        static double Part(double count, double chance) => count == 0 ? 0 : count * Math.Log(chance);
    }
}
