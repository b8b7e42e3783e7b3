using System.Collections.Immutable;
using Handhold.Randomness;

namespace Handhold.Laws;

/// <summary>Whatever was shot, fit and answers are numbers.</summary>
internal static class AnyTable
{
    private const long Seed = 20250202;

    /// <summary>What is wrong with the fits of so many random tables; empty when nothing is.</summary>
    internal static ImmutableArray<string> Faults(int tables, int threads)
    {
        var faults = new string?[tables];
        Parallel.For(0, tables, new() { MaxDegreeOfParallelism = threads }, i => faults[i] = Fault(Randomness.Seed.From(Seed).Stream(i)));
        return [.. faults.Index().Where(f => f.Item is not null).Select(f => $"table {f.Index}: {f.Item}")];
    }

    private static string? Fault(RandomStream stream)
    {
        try
        {
            var curve = KeeperModel.Default.Fit(RandomTables.Draw(stream)).Only;
            var at = curve.Data.Speeds[(int)(curve.Data.Speeds.Length * stream.Uniform())].Exposure;
            AnswerOptions options = new() { CheckPriors = false, Budget = 50 };
            var rate = curve.RateAt(at, options).Rate!;
            var pieces = curve.HalfKeeperExposure(options).Set.Pieces;
            return curve.Parameters.Any(p => !Ordered(double.MinValue, p.Interval.Lower, p.Median, p.Interval.Upper, double.MaxValue))
                    ? "a parameter has no interval around its median"
                : curve.Parameters.Any(p => !double.IsFinite(p.Mean) || !(p.StandardDeviation >= 0)) ? "a parameter has no moments"
                : !Ordered(0, rate.Interval.Lower, rate.Median, rate.Interval.Upper, 1) || !Ordered(0, rate.Mean, 1)
                    ? "a rate is outside 0 to 1 or its interval"
                : !Ordered(0, curve.FramesNeeded(at, 1, 0.9, options).Assurance, 1) ? "an assurance is outside 0 to 1"
                : pieces.Any(p => !Ordered(p.Lower ?? double.MinValue, p.Upper ?? double.MaxValue)) ? "an exposure set is no set"
                : null;
        }
#pragma warning disable CA1031 // any exception at all is a fault of the library
        catch (Exception fault)
#pragma warning restore CA1031
        {
            return fault.ToString();
        }
    }

    // False also where a number is NaN.
    private static bool Ordered(params ReadOnlySpan<double> values)
    {
        for (var i = 1; i < values.Length; i++)
        {
            if (!(values[i - 1] <= values[i]))
            {
                return false;
            }
        }
        return true;
    }
}
