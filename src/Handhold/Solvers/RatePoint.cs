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
    private readonly double _upLoss;
    private readonly double _downGain;

    internal RatePoint(Link link, double eta, double ceiling, double floor)
    {
        var at = Links.At(link, eta);
        var height = ceiling - floor;
        (F, G, _bend, _bendChange) = (at.F, at.G, at.Bend, at.BendChange);
        Slope = height * (at.F < at.G ? at.Up * at.F : at.Down * at.G);
        Rate = floor + height * at.F;
        Miss = 1 - ceiling + height * at.G;
        if (floor == 0)
            (LogRate, Up, _upLoss) = ((ceiling == 1 ? 0 : Math.Log(ceiling)) + at.LogF, at.Up, at.UpLoss);
        else
            (LogRate, Up, _upLoss) = (Math.Log(Rate), Slope / Rate, Slope / Rate - at.Bend);
        if (ceiling == 1)
            (LogMiss, Down, _downGain) = ((floor == 0 ? 0 : Elementary.Log1p(-floor)) + at.LogG, at.Down, at.DownGain);
        else
            (LogMiss, Down, _downGain) = (Math.Log(Miss), Slope / Miss, Slope / Miss + at.Bend);
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

    /// <summary>Expected information of one frame.</summary>
    internal double Weight => Up * Down;

    /// <summary>The derivative of the log of <see cref="Weight"/>.</summary>
    internal double WeightChange => _downGain - _upLoss;

    /// <summary>The second derivative of <see cref="Weight"/> over itself.</summary>
    internal double WeightBend => WeightChange * WeightChange + 2 * _bendChange + Up * _upLoss + Down * _downGain;

    internal double LogLikelihood(int keepers, int rejects) =>
        (keepers == 0 ? 0 : keepers * LogRate) + (rejects == 0 ? 0 : rejects * LogMiss);

    internal double Score(int keepers, int rejects) => keepers * Up - rejects * Down;

    /// <summary>Minus the second derivative of the log-likelihood.</summary>
    internal double Observed(int keepers, int rejects) => keepers * Up * _upLoss + rejects * Down * _downGain;

    /// <summary>Twice the log-likelihood lost against the rate k/n.</summary>
    internal double Deviance(int keepers, int rejects)
    {
        double frames = keepers + (double)rejects;
        return 2
            * (
                (keepers == 0 ? 0 : keepers * (Math.Log(keepers / frames) - LogRate))
                + (rejects == 0 ? 0 : rejects * (Math.Log(rejects / frames) - LogMiss))
            );
    }
}
