namespace Handhold.Fitting;

/// <summary>How fine a grid of half points must be at a held shape.</summary>
internal static class GridSteps
{
    private const double StepPerSd = 0.4;
    private const double StepPerLogit = 0.45;
    private const double BurstStepPerLogit = 0.35;

    /// <summary>Step that resolves the smoothed likelihood of any one burst, stops.</summary>
    internal static double Burst(CurveObservations data, Shape shape)
    {
        var largest = data.Sessions.SelectMany(s => s).Max(p => p.Cells.Sum(c => c.Frames));
        return Math.Min(BurstStepPerLogit, 2 * StepPerSd / Math.Sqrt(largest)) / shape.Steepness;
    }

    /// <summary>Step that resolves the likelihood of all frames together between two half points, bursts having luck of an sd, stops.</summary>
    internal static double All(CurveObservations data, Shape shape, NormalPrior prior, double burstSd, double start, double end)
    {
        var information = 0.0;
        for (var i = 0; i <= 32; i++)
            information = Math.Max(information, Information(data, shape, start + (end - start) * i / 32));
        foreach (var x in data.Exposures)
            if (x > start && x < end)
                information = Math.Max(information, Information(data, shape, x));
        if (burstSd > 0)
            information = Math.Min(information, data.Bursts / (burstSd * burstSd)); // no burst tells more of its half point than its luck allows
        information += 1 / (prior.StandardDeviation * prior.StandardDeviation);
        return Math.Min(StepPerSd / Math.Sqrt(information), Math.Max(StepPerLogit / shape.Steepness, StepPerSd * burstSd));
    }

    /// <summary>Sd of the sharpest normal that the likelihood and prior of all frames resemble at a steepness, stops.</summary>
    internal static double LikelihoodSd(CurveObservations data, double steepness, NormalPrior prior) =>
        All(data, new(steepness, 1, 0), prior, 0, data.Exposures[0] - 1, data.Exposures[^1] + 1) / StepPerSd;

    /// <summary>Information of all frames on the half point, without luck, for a curve from zero to one: n b² p (1 - p) summed.</summary>
    private static double Information(CurveObservations data, Shape shape, double halfPoint)
    {
        var sum = 0.0;
        for (var x = 0; x < data.Exposures.Length; x++)
        {
            var e = Math.Exp(-Math.Abs(shape.Steepness * (halfPoint - data.Exposures[x])));
            sum += data.Frames[x] * e / ((1 + e) * (1 + e));
        }

        return sum * shape.Steepness * shape.Steepness;
    }
}
