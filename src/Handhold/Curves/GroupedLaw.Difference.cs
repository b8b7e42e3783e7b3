using System.Collections.Immutable;
using Handhold.Kernels;

namespace Handhold.Curves;

internal sealed partial class GroupedLaw
{
    // Places where the pair may stand: close together near the estimates, far apart far out.
    private const int Places = 60;
    private const double Apart = 0.1;

    /// <summary>Whether the rate is one of levels that are known or drawn anew, rather than an average.</summary>
    internal bool IsOfLevels => !_isAverage;

    /// <summary>The signed root, by stops that another line may lie slower at a rate; positive below the estimate.</summary>
    /// <remarks>
    /// Were t the difference, the lines would have the rate at some x and x + t. With d their two heights above it there and V the covariance of these, from estimates and the most likely effects
    /// of both sides together, that costs the least of dᵀV⁻¹d over x. What the sides share drops out, also levels that are drawn anew, the same ones on both. Of lines of one slope this is Fieller's
    /// statistic, of lines of two fits the sum of theirs. Source: Fieller (1954), Journal of the Royal Statistical Society B 16, 175-185.
    /// </remarks>
    internal Func<double, double> StopsTo(GroupedLaw other, double rate, double estimate)
    {
        var joint = Covariance(other);
        var (mine, theirs) = (LineAbove(rate), other.LineAbove(rate));
        var (here, there) = (-mine.Still / mine.Moving, -theirs.Still / theirs.Moving);
        return stops => stops == estimate ? 0 : Math.CopySign(Math.Sqrt(Cost(stops)), estimate - stops);

        double Cost(double stops)
        {
            var (centre, width) = ((here + there - stops) / 2, 0.25 + Math.Abs(there - stops - here));
            double[] places = [.. Enumerable.Range(-Places, 2 * Places + 1).Select(i => centre + width * Math.Sinh(i * Apart))];
            var best = places.Index().MinBy(place => At(place.Item)).Index;
            return Valley.Least(At, places[Math.Max(0, best - 1)], places[Math.Min(2 * Places, best + 1)], 1e-9);

            double At(double x)
            {
                var y = x + stops;
                var (a, b) = (mine.Still + x * mine.Moving, theirs.Still + y * theirs.Moving);
                var aa = joint[0] + x * (2 * joint[1] + x * joint[5]);
                var ab = joint[2] + y * joint[3] + x * (joint[6] + y * joint[7]);
                var bb = joint[10] + y * (2 * joint[11] + y * joint[15]);
                return Math.Max(0, (a * a * bb - 2 * a * b * ab + b * b * aa) / (aa * bb - ab * ab));
            }
        }
    }

    /// <summary>The line's height above that of a rate: still + x moving.</summary>
    private (double Still, double Moving) LineAbove(double rate) =>
        (_fit.Predictor(_still.AsSpan(), _known.AsSpan()) - Links.Inverse(Link, rate), _fit.Predictor(_moving.AsSpan(), _known.AsSpan()));

    /// <summary>Of still and moving part of this line, then of the other: 4 × 4, row-major.</summary>
    private double[] Covariance(GroupedLaw other)
    {
        ImmutableArray<ImmutableArray<double>> rows = [_still, _moving, other._still, other._moving];
        ImmutableArray<(ImmutableArray<double>, ImmutableArray<(int, int)>)> lines =
        [
            (_still, _known),
            (_moving, _known),
            (other._still, other._known),
            (other._moving, other._known),
        ];
        var areOneFit = _fit == other._fit;
        var mine = _fit.Modes.Covariance(areOneFit ? lines : lines[..2]);
        var theirs = areOneFit ? mine : other._fit.Modes.Covariance(lines[2..]);
        var joint = new double[16];
        for (var i = 0; i < 4; i++)
        for (var j = 0; j < 4; j++)
            if (areOneFit)
                joint[4 * i + j] = mine[4 * i + j] + Fresh(rows[i], rows[j]);
            else if (i < 2 == j < 2)
                joint[4 * i + j] =
                    i < 2 ? mine[2 * i + j] + Fresh(rows[i], rows[j]) : theirs[2 * (i - 2) + j - 2] + other.Fresh(rows[i], rows[j]);
        return joint;
    }

    // The covariance of two rows between levels drawn anew.
    private double Fresh(ImmutableArray<double> one, ImmutableArray<double> other) =>
        _fresh.Sum(part => Orthonormal.Dot(_fit.Loading(part, one.AsSpan()), _fit.Loading(part, other.AsSpan())));
}
