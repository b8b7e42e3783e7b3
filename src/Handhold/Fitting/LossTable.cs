using Handhold.Kernels;

namespace Handhold.Fitting;

/// <summary>A small probability with a beta prior as a function of a standard normal coordinate: the prior's quantile at Φ(z).</summary>
/// <remarks>Its logit is smooth in z, so a table interpolated by <see cref="SampledFunction"/> gives it to six digits, to eight with the default priors; beyond its bulk the quantile itself.</remarks>
internal sealed class LossTable
{
    private const double Reach = 8;
    private const int Nodes = 81;
    private const double Step = 0.25;
    private readonly BetaPrior _prior;
    private readonly SampledFunction _logit;

    internal LossTable(BetaPrior prior)
    {
        _prior = prior;
        var (start, logits) = (-Step * (Nodes - 1) / 2, new double[Nodes]);
        for (var i = 0; i < Nodes; i++)
        {
            var (loss, rest) = Quantile(prior, start + i * Step);
            logits[i] = Math.Log(loss / rest);
        }

        _logit = new(start, Step, logits);
    }

    internal double At(double z) => Math.Abs(z) <= Reach ? Elementary.Logistic(_logit.At(z)).Mu : Quantile(_prior, z).X;

    /// <summary>The prior's quantile at Φ(z), and one less it.</summary>
    internal static (double X, double OneMinusX) Quantile(BetaPrior prior, double z)
    {
        if (z < 0)
            return Beta.Quantile(Normal.Cdf(z), prior.A, prior.B);
        var (rest, loss) = Beta.Quantile(Normal.Cdf(-z), prior.B, prior.A);
        return (loss, rest);
    }
}
