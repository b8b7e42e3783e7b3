using System.Collections.Immutable;
using Handhold.Kernels;

namespace Handhold.Curves;

internal sealed partial class ProfileLaw
{
    private const double Finest = 1e-12; // log2 seconds: halving goes no further, since doubles end

    /// <summary>Whether stops to another line have a profile, rather than a standard error only.</summary>
    internal bool ProfilesTo(ProfileLaw other) => Likelihood != other.Likelihood || _moving.SequenceEqual(other._moving);

    /// <summary>The signed root, by stops that another line may lie slower at a rate; positive below the estimate.</summary>
    internal Func<double, double> StopsTo(ProfileLaw other, double rate, double estimate)
    {
        if (Likelihood != other.Likelihood)
            return stops => Math.CopySign(Math.Sqrt(LostByBoth(other, rate, stops)), estimate - stops);
        if (_moving.SequenceEqual(other._moving))
            return stops => Math.CopySign(Likelihood.LossRootOf([.. Apart(other, stops)], 0), estimate - stops);
        var deviation = Deviation(other, rate);
        return stops => (estimate - stops) / deviation;
    }

    private IEnumerable<double> Apart(ProfileLaw other, double stops) =>
        Enumerable.Range(0, _still.Length).Select(j => other._still[j] - _still[j] + stops * _moving[j]);

    /// <summary>Two fits: twice the least that both lose, over where this line has the rate.</summary>
    private double LostByBoth(ProfileLaw other, double rate, double stops)
    {
        var centre = (Exposure(rate) ?? 0) / 2 + ((other.Exposure(rate) ?? 0) - stops) / 2;
        var half = Math.Abs((Exposure(rate) ?? 0) - centre) + 1e-9;
        return Valley.Least(At, centre - half, centre + half, Math.Max(Finest, 1e-7 * Math.Min(1, half)));

        double At(double x)
        {
            var (mine, theirs) = (Likelihood.LossRoot(Row(x), rate), other.Likelihood.LossRoot(other.Row(x + stops), rate));
            return mine * mine + theirs * theirs;
        }
    }

    /// <summary>Standard deviation of the difference of two exposures of one fit, by the delta method.</summary>
    private double Deviation(ProfileLaw other, double rate)
    {
        if (Likelihood.Estimate is not { } estimate)
            return double.PositiveInfinity;
        var (mine, theirs) = (Gradient(rate), other.Gradient(rate));
        double[] gradient = [.. mine.Zip(theirs, (m, t) => t - m)];
        var variance = 0.0;
        for (var i = 0; i < gradient.Length; i++)
        for (var j = 0; j < gradient.Length; j++)
            variance += gradient[i] * estimate.Covariance[i * gradient.Length + j] * gradient[j];
        return Math.Sqrt(variance);
    }

    /// <summary>Of the exposure with a rate: -row / slope.</summary>
    private ImmutableArray<double> Gradient(double rate)
    {
        var slope = Likelihood.Dot(_moving) ?? double.NaN;
        return [.. Row(Exposure(rate) ?? double.NaN).Select(x => -x / slope)];
    }
}
