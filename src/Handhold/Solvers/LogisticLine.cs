using Handhold.Kernels;

namespace Handhold.Solvers;

/// <summary>The likelihood of a logistic line, log odds = intercept + slope x, and its maximum, plain or penalised by Jeffreys' prior. Allocates nothing.</summary>
/// <remarks>
/// Newton's method. At each step x is measured from the weighted mean of the last point, where level and slope are nearly orthogonal: what QR does for more
/// columns, so that no condition number is squared. It arrives when a step would be shorter than 1e-9 standard errors, and does not where keepers and rejects
/// separate, since every step then moves their log odds by about 1. The penalised likelihood is climbed from even odds and from the likelihood's maximum.
/// Checked against the solver of any number of columns.
/// </remarks>
internal readonly ref partial struct LogisticLine
{
    private const double Close = 1e-9;
    private const int Budget = 25;
    private const int Halvings = 20;
    private const int LikelihoodSteps = 6;

    private readonly ReadOnlySpan<double> _design;
    private readonly ReadOnlySpan<int> _frames;
    private readonly ReadOnlySpan<int> _keepers;

    /// <summary>A line through cells.</summary>
    /// <param name="design">Rows × 2, row-major: a one and x, which varies.</param>
    /// <param name="frames">Trials n of each row.</param>
    /// <param name="keepers">Successes k of each row.</param>
    internal LogisticLine(ReadOnlySpan<double> design, ReadOnlySpan<int> frames, ReadOnlySpan<int> keepers)
    {
        _design = design;
        _frames = frames;
        _keepers = keepers;
    }

    /// <summary>The greatest Σ k log p + (n - k) log(1 - p).</summary>
    internal LogisticFit Likelihood()
    {
        var at = Start();
        return Climb(ref at, penalised: false, Close, Budget) is { } top ? Finish(at, top, penalised: false) : LogisticFit.None;
    }

    /// <summary>The same with half the log determinant of the expected information added, for evenly spaced x.</summary>
    /// <remarks>Unevenly spaced x may give more maxima than the two starts find.</remarks>
    internal LogisticFit BiasReduced()
    {
        var (here, along) = (Start(), Start());
        if (Climb(ref here, penalised: true, Close, Budget) is not { } top)
            return LogisticFit.None;
        Climb(ref along, penalised: false, 0.01, LikelihoodSteps);
        if (Climb(ref along, penalised: true, 1e-4, Budget) is not { } near)
            return LogisticFit.None;
        var fit = Finish(here, top, penalised: true);
        if (near.Distance(along, here) < 1e-3)
            return fit;
        if (Climb(ref along, penalised: true, Close, Budget) is not { } other)
            return LogisticFit.None;
        var rival = Finish(along, other, penalised: true);
        return rival.Objective > fit.Objective ? rival : fit;
    }

    // Even odds everywhere, seen from the middle of the frames.
    private LinePoint Start()
    {
        var (sum, total) = (0.0, 0.0);
        for (var i = 0; i < _frames.Length; i++)
            (sum, total) = (sum + _frames[i] * _design[2 * i + 1], total + _frames[i]);
        return new(sum / total, 0, 0, 0);
    }

    // Moves to the last point a step was taken to, and gives the direction from which that step came; null when it does not arrive.
    private LineDirection? Climb(ref LinePoint at, bool penalised, double close, int budget)
    {
        var here = Direction(at, penalised);
        for (var step = 1; step <= budget; step++)
        {
            if (!(here.Decrement < double.PositiveInfinity))
                return null;
            if (here.Decrement <= close)
            {
                at = at.Moved(here, 1);
                return here.IsMaximum ? here : null;
            }
            var length = 1.0;
            var next = at.Moved(here, length);
            var there = Direction(next, penalised);
            // Uphill still, or not far past the top along this step.
            for (var halving = 0; !(there.Along(here) >= -0.5 * here.Gain) && halving < Halvings; halving++)
            {
                length /= 2;
                next = at.Moved(here, length);
                there = Direction(next, penalised);
            }
            (at, here) = (next, there);
        }
        return null;
    }

    private LogisticFit Finish(LinePoint at, LineDirection last, bool penalised)
    {
        var (sum, deviance) = (0.0, 0.0);
        for (var i = 0; i < _frames.Length; i++)
        {
            var (kept, rejects) = ((double)_keepers[i], (double)_frames[i] - _keepers[i]);
            var eta = at.Predictor(_design[2 * i + 1]);
            var softplus = Elementary.Log1p(Math.Exp(-Math.Abs(eta)));
            var logLikelihood = (eta < 0 ? kept * eta : -rejects * eta) - (kept + rejects) * softplus;
            sum += logLikelihood;
            deviance += Entropy(kept, kept + rejects) + Entropy(rejects, kept + rejects) - logLikelihood;
        }
        return new(at, last, sum, 2 * deviance, penalised);
    }

    private static double Entropy(double part, double whole) => part == 0 ? 0 : part * Math.Log(part / whole);
}
