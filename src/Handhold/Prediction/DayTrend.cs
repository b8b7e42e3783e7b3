namespace Handhold;

/// <summary>How much slower one could go on the last day than on the first, when the days' luck is left aside.</summary>
public sealed class DayTrend
{
    internal DayTrend(string first, string last, Stops stops, CredibleInterval interval, double probabilityBetter, bool isTold) =>
        (First, Last, Stops, Interval, ProbabilityBetter, IsTold) = (first, last, stops, interval, probabilityBetter, isTold);

    /// <summary>The first day, by label.</summary>
    public string First { get; }

    /// <summary>The last day.</summary>
    public string Last { get; }

    /// <summary>Median of the change; positive is progress.</summary>
    public Stops Stops { get; }

    /// <summary>Its interval, stops. Days differ by luck, so that two days alone show only large changes.</summary>
    public CredibleInterval Interval { get; }

    /// <summary>Probability that it is progress.</summary>
    public double ProbabilityBetter { get; }

    /// <summary>Whether the interval leaves out no change, and its numbers can be trusted.</summary>
    public bool IsTold { get; }
}
