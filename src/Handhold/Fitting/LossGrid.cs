using Handhold.Kernels;

namespace Handhold.Fitting;

/// <summary>Nodes for a small probability with a beta prior, in a coordinate t where its density decays fast on both sides.</summary>
/// <remarks>logit(loss) = t - exp(-(t - t0)): a double-exponential left tail (Takahasi and Mori 1974, Publ. RIMS 9, 721-741), so that uniform steps serve.</remarks>
internal sealed class LossGrid
{
    private readonly BetaPrior _prior;
    private readonly double _centre;
    private readonly double _corner;
    private readonly double _logBeta;

    internal LossGrid(BetaPrior prior, int halvings)
    {
        (_prior, Halvings, Step) = (prior, halvings, Math.ScaleB(0.7, -halvings));
        var logit = Elementary.Logit(prior.A / (prior.A + prior.B));
        _corner = logit - 1.5;
        _centre = logit;
        for (var i = 0; i < 50; i++)
            _centre -= (Logit(_centre) - logit) / (1 + Math.Exp(-(_centre - _corner)));
        _logBeta = GammaFunctions.LogBeta(prior.A, prior.B);
    }

    /// <summary>How often the first step was halved.</summary>
    internal int Halvings { get; }

    /// <summary>Distance of nodes in t.</summary>
    internal double Step { get; }

    /// <summary>The coordinate of a node.</summary>
    internal double At(int node) => _centre + node * Step;

    /// <summary>The probability at a coordinate.</summary>
    internal double Loss(double t) => Elementary.Logistic(Logit(t)).Mu;

    /// <summary>Log prior density in t.</summary>
    internal double LogDensity(double t)
    {
        var y = Logit(t);
        return _prior.A * Elementary.LogLogistic(y)
            + _prior.B * Elementary.LogLogistic(-y)
            - _logBeta
            + Elementary.Log1p(Math.Exp(-(t - _corner)));
    }

    private double Logit(double t) => t - Math.Exp(-(t - _corner));
}
