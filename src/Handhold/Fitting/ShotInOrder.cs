namespace Handhold.Fitting;

/// <summary>Whether order of shooting and exposure go together within a session, so that practice or fatigue cannot be told from shake.</summary>
internal static class ShotInOrder
{
    private const double Together = 0.8; // rank correlation
    private const int FewestRows = 4;

    internal static bool IsConfounded(IReadOnlyCollection<FrameCell> rows) =>
        rows.Any(r => r.InOrder)
        || rows.Where(r => r.Frames > 0 && r.Conditions.Order is not null)
            .GroupBy(r => (r.Conditions.Photographer, r.Conditions.Session))
            .Any(session => session.Count() >= FewestRows && Math.Abs(RankCorrelation([.. session])) > Together);

    /// <summary>Spearman's correlation of order and exposure, ties at their mean rank; 0 where one of them does not vary.</summary>
    private static double RankCorrelation(FrameCell[] rows)
    {
        var orders = Ranks(Array.ConvertAll(rows, r => (double)r.Conditions.Order!.Value));
        var exposures = Ranks(Array.ConvertAll(rows, r => r.Exposure.Seconds));
        var mean = (rows.Length + 1) / 2.0;
        var (both, first, second) = (0.0, 0.0, 0.0);
        for (var i = 0; i < rows.Length; i++)
        {
            var (a, b) = (orders[i] - mean, exposures[i] - mean);
            both += a * b;
            first += a * a;
            second += b * b;
        }

        return first == 0 || second == 0 ? 0 : both / Math.Sqrt(first * second);
    }

    private static double[] Ranks(double[] values)
    {
        var mean = values
            .Order()
            .Select((value, i) => (value, Rank: i + 1.0))
            .GroupBy(v => v.value)
            .ToDictionary(g => g.Key, g => g.Average(v => v.Rank));
        return Array.ConvertAll(values, v => mean[v]);
    }
}
