namespace Handhold.Kernels;

/// <summary>A link's curve averaged over a normal shift of its predictor: the rate of a frame of whatever luck.</summary>
/// <remarks>M(η, s) = E F(η + s u), u standard normal, by the trapezoid rule, whose step shrinks with s since the logistic curve's poles lie at ±iπ: within 1e-10.</remarks>
internal static class AveragedLink
{
    private const double Reach = 8.5;
    private const double Farthest = 60; // predictors beyond which every curve is level
    private const double Tolerance = 1e-13;

    /// <summary>M and 1 - M.</summary>
    internal static (double F, double G) At(Link link, double eta, double sd)
    {
        if (sd == 0 && Links.At(link, eta) is var single)
            return (single.F, single.G);
        var (f, g) = (0.0, 0.0);
        var (step, nodes, weight) = Rule(sd);
        for (var i = -nodes; i <= nodes; i++)
        {
            var at = Links.At(link, eta + sd * i * step);
            var share = weight * Math.Exp(-0.5 * i * step * i * step);
            (f, g) = (f + share * at.F, g + share * at.G);
        }
        return (f, g);
    }

    /// <summary>The η with M(η, s) = p, and its first two derivatives in s.</summary>
    internal static (double Eta, double Slope, double Bend) Height(Link link, double p, double sd)
    {
        var (wanted, far) = (Math.Log(p / (1 - p)), Farthest + Reach * Math.Abs(sd));
        var eta =
            sd == 0
                ? Links.Inverse(link, p)
                : Root.Of(
                    x =>
                    {
                        var (f, g) = At(link, x, sd);
                        return f == 0 ? -far
                            : g == 0 ? far
                            : Math.Log(f / g) - wanted;
                    },
                    -far,
                    far,
                    Tolerance
                );
        var (byEta, bySd, bend, cross, spreadBend) = (0.0, 0.0, 0.0, 0.0, 0.0);
        var (step, nodes, weight) = Rule(sd);
        for (var i = -nodes; i <= nodes; i++)
        {
            var (u, at) = (i * step, Links.At(link, eta + sd * i * step));
            var slope = weight * Math.Exp(-0.5 * u * u) * (at.F < at.G ? at.Up * at.F : at.Down * at.G);
            (byEta, bySd) = (byEta + slope, bySd + u * slope);
            slope *= at.Bend;
            (bend, cross, spreadBend) = (bend + slope, cross + u * slope, spreadBend + u * u * slope);
        }
        var move = -bySd / byEta;
        return (eta, move, -(spreadBend + move * (2 * cross + move * bend)) / byEta);
    }

    /// <summary>Correlation of two frames that share the shift: the variance of their rate P = floor + (ceiling - floor) F over M (1 - M).</summary>
    internal static double Correlation(Link link, double eta, double sd, double ceiling, double floor)
    {
        var (keep, miss, both, neither) = (0.0, 0.0, 0.0, 0.0);
        var (step, nodes, weight) = Rule(sd);
        for (var i = -nodes; i <= nodes; i++)
        {
            var (p, q) = Links.Capped(link, eta + sd * i * step, ceiling, floor);
            var share = weight * Math.Exp(-0.5 * i * step * i * step);
            (keep, miss, both, neither) = (keep + share * p, miss + share * q, both + share * p * p, neither + share * q * q);
        }
        // The smaller of the two is nothing's difference of much larger numbers.
        return keep < miss ? (both - keep * keep) / (keep * miss) : (neither - miss * miss) / (keep * miss);
    }

    private static (double Step, int Nodes, double Weight) Rule(double sd)
    {
        var step = Math.Min(0.4, 0.8 / Math.Max(Math.Abs(sd), 1e-9));
        return (step, (int)Math.Ceiling(Reach / step), step / Math.Sqrt(2 * Math.PI));
    }
}
