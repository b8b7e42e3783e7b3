namespace Handhold.Fitting;

/// <summary>Trapezoid nodes found by walking outward from a start until the integrand is negligible.</summary>
internal static class Walk
{
    private const double Cut = 11.5; // exp(-11.5) = 1e-5 of the top: 4.8 sds of a normal
    private const int MostNodes = 400;

    /// <summary>Second difference of the log integrand at its top beyond which the nodes are too far apart: 1.3 is a step of 1.14 sd, error 5e-7.</summary>
    internal const double TooCoarse = 1.3;

    /// <summary>Log integrand at indices around <paramref name="start"/>, from the first to the last that matters.</summary>
    /// <param name="start">Where the walk begins.</param>
    /// <param name="logIntegrand">The integrand.</param>
    /// <param name="already">The top of a wider integral of which this is a part: what does not matter there does not matter here.</param>
    internal static (int First, List<double> Logs) Outward(
        int start,
        Func<int, double> logIntegrand,
        double already = double.NegativeInfinity
    )
    {
        var logs = new LinkedList<double>();
        var (first, last) = (start, start);
        logs.AddLast(logIntegrand(start));
        var top = Math.Max(already, logs.First!.Value);
        while (logs.Count < MostNodes && (last < start + 1 || logs.Last!.Value > Math.Min(top - Cut, logs.Last.Previous!.Value)))
        {
            logs.AddLast(logIntegrand(++last));
            top = Math.Max(top, logs.Last!.Value);
        }

        while (logs.Count < MostNodes && (first > start - 1 || logs.First!.Value > Math.Min(top - Cut, logs.First.Next!.Value)))
        {
            logs.AddFirst(logIntegrand(--first));
            top = Math.Max(top, logs.First!.Value);
        }

        return (first, [.. logs]);
    }

    /// <summary>Largest curvature of the log integrand where it is within 6 of its top, per squared step.</summary>
    internal static double Curvature(IReadOnlyList<double> logs)
    {
        var top = logs.Max();
        var worst = 0.0;
        for (var i = 1; i + 1 < logs.Count; i++)
            if (logs[i] > top - 6)
                worst = Math.Max(worst, 2 * logs[i] - logs[i - 1] - logs[i + 1]);
        return worst;
    }
}
