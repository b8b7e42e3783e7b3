namespace Handhold.Solvers;

/// <summary>A logistic line: its log odds at a centre, and their slope.</summary>
/// <param name="Centre">An x.</param>
/// <param name="Level">Log odds there.</param>
/// <param name="Slope">Change of the log odds for one unit of x.</param>
/// <param name="Steps">Steps that led here.</param>
internal readonly record struct LinePoint(double Centre, double Level, double Slope, int Steps)
{
    internal double Predictor(double x) => Level + Slope * (x - Centre);

    /// <summary>A share of a step further, seen from the weighted mean of where the step began.</summary>
    internal LinePoint Moved(in LineDirection step, double share) =>
        new(Centre + step.Shift, Level + Slope * step.Shift + share * step.Level, Slope + share * step.Slope, Steps + 1);
}
