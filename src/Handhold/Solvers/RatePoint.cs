using Handhold.Kernels;

namespace Handhold.Solvers;

/// <summary>The rate P = floor + (ceiling - floor) F(η) of one row, with the derivatives of its log-likelihood.</summary>
/// <remarks>
/// With A = P'/P, B = P'/(1 - P) and κ = F''/F' of k keepers and r rejects the score is kA - rB, minus the second derivative kA(A - κ) + rB(B + κ), the expected
/// information of n frames nAB; all derivatives in η.
/// </remarks>
internal readonly struct RatePoint
{
    private readonly double _bend;
    private readonly double _bendChange;

    internal RatePoint(Link link, double eta, double ceiling, double floor)
    {
        var at = Links.At(link, eta);
        var height = ceiling - floor;
        (F, G, _bend, _bendChange) = (at.F, at.G, at.Bend, at.BendChange);
        Slope = height * (at.F < at.G ? at.Up * at.F : at.Down * at.G);
        Rate = floor + height * at.F;
        Miss = 1 - ceiling + height * at.G;
        if (floor == 0)
            (LogRate, Up, UpLoss) = ((ceiling == 1 ? 0 : Math.Log(ceiling)) + at.LogF, at.Up, at.UpLoss);
        else
            (LogRate, Up, UpLoss) = (Math.Log(Rate), Slope / Rate, Slope / Rate - at.Bend);
        if (ceiling == 1)
            (LogMiss, Down, DownGain) = ((floor == 0 ? 0 : Elementary.Log1p(-floor)) + at.LogG, at.Down, at.DownGain);
        else
            (LogMiss, Down, DownGain) = (Math.Log(Miss), Slope / Miss, Slope / Miss + at.Bend);
    }

    internal double F { get; }

    internal double G { get; }

    /// <summary>P.</summary>
    internal double Rate { get; }

    /// <summary>1 - P.</summary>
    internal double Miss { get; }

    internal double LogRate { get; }

    internal double LogMiss { get; }

    /// <summary>P'.</summary>
    internal double Slope { get; }

    /// <summary>P''.</summary>
    internal double Curve => Slope * _bend;

    /// <summary>P'/P.</summary>
    internal double Up { get; }

    /// <summary>P'/(1 - P).</summary>
    internal double Down { get; }

    /// <summary>P'/P - P''/P': minus the derivative of log(P'/P).</summary>
    internal double UpLoss { get; }

    /// <summary>P'/(1 - P) + P''/P': the derivative of log(P'/(1 - P)).</summary>
    internal double DownGain { get; }

    /// <summary>Expected information of one frame.</summary>
    internal double Weight => Up * Down;

    /// <summary>The derivative of the log of <see cref="Weight"/>.</summary>
    internal double WeightChange => DownGain - UpLoss;

    /// <summary>The second derivative of <see cref="Weight"/> over itself.</summary>
    internal double WeightBend => WeightChange * WeightChange + 2 * _bendChange + Up * UpLoss + Down * DownGain;

    internal double LogLikelihood(double keepers, double rejects) =>
        (keepers == 0 ? 0 : keepers * LogRate) + (rejects == 0 ? 0 : rejects * LogMiss);

    internal double Score(double keepers, double rejects) => keepers * Up - rejects * Down;

    /// <summary>Minus the second derivative of the log-likelihood.</summary>
    internal double Observed(double keepers, double rejects) => keepers * Up * UpLoss + rejects * Down * DownGain;

    /// <summary>The derivative of <see cref="Observed"/>.</summary>
    internal double ObservedChange(double keepers, double rejects) =>
        rejects * Down * (DownGain * DownGain + Down * DownGain + _bendChange)
        - keepers * Up * (UpLoss * UpLoss + Up * UpLoss + _bendChange);

    /// <summary>Twice the log-likelihood lost against the rate k/n, which rounding never makes a gain.</summary>
    internal double Deviance(int keepers, int rejects)
    {
        double frames = keepers + (double)rejects;
        var lost =
            (keepers == 0 ? 0 : keepers * (Math.Log(keepers / frames) - LogRate))
            + (rejects == 0 ? 0 : rejects * (Math.Log(rejects / frames) - LogMiss));
        return 2 * Math.Max(0, lost);
    }
}
