namespace Handhold.Solvers;

/// <summary>Frames of a cluster share a shift of the predictor: η + spread · u, u standard normal.</summary>
/// <remarks>
/// L = ∫ Π P(η_i + s u)^k (1 - P)^r φ(u) du by Gauss-Hermite quadrature about the top û of the integrand, in steps of its scale t; one node is Laplace's method.
/// First derivatives are those of the quadrature itself, the moves of û and t included; second derivatives are those of the integral: the mean of the
/// integrand's less the covariance of its first ones. Sources: Liu and Pierce (1994), Biometrika 81, 624-629; Louis (1982), Journal of the Royal Statistical Society B 44, 226-233.
/// </remarks>
internal sealed class NormalShift : IClusterLaw
{
    // Second derivatives by fewer nodes would miss the covariance.
    private const int NodesOfCurvature = 15;
    private const double LeastCurvature = 0.25;
    private const int Steps = 100;

    private readonly Link _link;
    private readonly double _ceiling;
    private readonly double _floor;
    private readonly HermiteNodes _nodes;
    private readonly HermiteNodes _curvatureNodes;
    private readonly double[] _share;
    private readonly double[] _score;
    private readonly double[] _observed;
    private readonly double[] _mean;

    internal NormalShift(ClusteredProblem problem, HermiteNodes nodes)
    {
        (_link, _ceiling, _floor, _nodes) = (problem.Rows.Link, problem.Rows.Ceiling!.Value, problem.Rows.Floor!.Value, nodes);
        _curvatureNodes = nodes.Count < NodesOfCurvature ? HermiteNodes.Of(NodesOfCurvature) : nodes;
        (_share, _mean) = (new double[_curvatureNodes.Count], new double[problem.Widest + 1]);
        (_score, _observed) = (new double[_share.Length * problem.Widest], new double[_share.Length * problem.Widest]);
    }

    public double LogLikelihood(Cluster cluster, double spread)
    {
        var (top, scale) = Top(cluster, spread);
        return Weigh(_nodes, cluster, spread, top, scale);
    }

    public double Evaluate(Cluster cluster, double spread, Span<double> gradient, Span<double> curvature)
    {
        var (top, scale) = Top(cluster, spread);
        var value = Weigh(_nodes, cluster, spread, top, scale);
        Slope(cluster, spread, top, scale, gradient);
        if (_curvatureNodes != _nodes)
            Weigh(_curvatureNodes, cluster, spread, top, scale);
        Bend(cluster.Rows, top, scale, curvature);
        return value;
    }

    private RatePoint At(Cluster cluster, int row, double shift) => new(_link, cluster.Predictors[row] + shift, _ceiling, _floor);

    // The integrand's top and scale, by Newton's method with halved steps where it overshoots.
    private (double Top, double Scale) Top(Cluster cluster, double spread)
    {
        var (u, height) = (0.0, double.NegativeInfinity);
        var (step, curvature) = (0.0, 1.0);
        for (var tries = 0; tries < Steps; tries++)
        {
            var (there, score, observed) = (-0.5 * u * u, 0.0, 0.0);
            for (var i = 0; i < cluster.Rows; i++)
            {
                var at = At(cluster, i, spread * u);
                there += at.LogLikelihood(cluster.Keepers[i], cluster.Rejects[i]);
                score += at.Score(cluster.Keepers[i], cluster.Rejects[i]);
                observed += at.Observed(cluster.Keepers[i], cluster.Rejects[i]);
            }
            if (there < height - 1e-12 * Math.Abs(height))
            {
                step /= 2;
                u -= step;
                continue;
            }
            height = there;
            curvature = Math.Max(LeastCurvature, 1 + spread * spread * observed);
            if (Math.Abs(step) < 1e-12 && tries > 0)
                break;
            step = (spread * score - u) / curvature;
            u += step;
        }
        return (u, 1 / Math.Sqrt(curvature));
    }

    // The log of the integral; leaves the shares of the nodes, and at each the rows' scores and observed informations.
    private double Weigh(HermiteNodes nodes, Cluster cluster, double spread, double top, double scale)
    {
        var (rows, most) = (cluster.Rows, double.NegativeInfinity);
        for (var q = 0; q < nodes.Count; q++)
        {
            var u = top + scale * nodes.At[q];
            var log = nodes.LogWeight[q] - 0.5 * u * u;
            for (var i = 0; i < rows; i++)
            {
                var at = At(cluster, i, spread * u);
                log += at.LogLikelihood(cluster.Keepers[i], cluster.Rejects[i]);
                _score[q * rows + i] = at.Score(cluster.Keepers[i], cluster.Rejects[i]);
                _observed[q * rows + i] = at.Observed(cluster.Keepers[i], cluster.Rejects[i]);
            }
            _share[q] = log;
            most = Math.Max(most, log);
        }
        var sum = 0.0;
        for (var q = 0; q < nodes.Count; q++)
            sum += _share[q] = Math.Exp(_share[q] - most);
        for (var q = 0; q < nodes.Count; q++)
            _share[q] /= sum;
        return most + Math.Log(sum * scale);
    }

    private void Slope(Cluster cluster, double spread, double top, double scale, Span<double> gradient)
    {
        var (rows, pull, pullByNode) = (cluster.Rows, 0.0, 0.0);
        gradient.Clear();
        for (var q = 0; q < _nodes.Count; q++)
        {
            var (u, score) = (top + scale * _nodes.At[q], 0.0);
            for (var i = 0; i < rows; i++)
            {
                gradient[i] += _share[q] * _score[q * rows + i];
                score += _score[q * rows + i];
            }
            gradient[rows] += _share[q] * u * score;
            pull += _share[q] * (spread * score - u);
            pullByNode += _share[q] * (spread * score - u) * _nodes.At[q];
        }
        // What the integrand at the nodes gains as the top and the scale move.
        var (slope, observed, change) = (0.0, 0.0, 0.0);
        for (var i = 0; i < rows; i++)
        {
            var at = At(cluster, i, spread * top);
            slope += at.Score(cluster.Keepers[i], cluster.Rejects[i]);
            observed += at.Observed(cluster.Keepers[i], cluster.Rejects[i]);
            change += at.ObservedChange(cluster.Keepers[i], cluster.Rejects[i]);
        }
        var moves = 1 + spread * spread * observed > LeastCurvature;
        var variance = scale * scale;
        for (var a = 0; a <= rows; a++)
        {
            double moved,
                bent;
            if (a < rows)
            {
                var at = At(cluster, a, spread * top);
                moved = -variance * spread * at.Observed(cluster.Keepers[a], cluster.Rejects[a]);
                bent = spread * spread * (at.ObservedChange(cluster.Keepers[a], cluster.Rejects[a]) + spread * change * moved);
            }
            else
            {
                moved = variance * (slope - spread * top * observed);
                bent = 2 * spread * observed + spread * spread * change * (top + spread * moved);
            }
            var stretched = moves ? -0.5 * variance * bent : 0;
            gradient[a] += moved * pull + stretched * (1 + scale * pullByNode);
        }
    }

    private void Bend(int rows, double top, double scale, Span<double> curvature)
    {
        var size = rows + 1;
        curvature.Clear();
        var mean = _mean.AsSpan(0, size);
        mean.Clear();
        for (var q = 0; q < _curvatureNodes.Count; q++)
        {
            var (u, share) = (top + scale * _curvatureNodes.At[q], _share[q]);
            var (score, observed) = (0.0, 0.0);
            for (var i = 0; i < rows; i++)
            {
                score += _score[q * rows + i];
                observed += _observed[q * rows + i];
            }
            for (var a = 0; a < size; a++)
            {
                var slope = a < rows ? _score[q * rows + a] : u * score;
                mean[a] += share * slope;
                for (var b = 0; b <= a; b++)
                    curvature[a * size + b] -= share * slope * (b < rows ? _score[q * rows + b] : u * score);
                if (a < rows)
                {
                    curvature[a * size + a] += share * _observed[q * rows + a];
                    curvature[rows * size + a] += share * u * _observed[q * rows + a];
                }
                else
                    curvature[a * size + a] += share * u * u * observed;
            }
        }
        for (var a = 0; a < size; a++)
        for (var b = 0; b <= a; b++)
            curvature[a * size + b] += mean[a] * mean[b];
    }
}
