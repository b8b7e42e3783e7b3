using System.Collections.Immutable;
using System.Globalization;
using System.Text;

namespace Handhold.Laws;

/// <summary>The table of calibration where levels vary, as it is committed.</summary>
internal static class LevelCalibrationReport
{
    internal const double Allowed = 0.05;

    internal static string Page(ImmutableArray<(string Name, ImmutableArray<double> Shares)> parameters)
    {
        StringBuilder page = new();
        page.Append(
            CultureInfo.InvariantCulture,
            $"""
            # Are posteriors of levels that vary where the truth is?

            {parameters[
                0
            ].Shares.Length} clubs were drawn from the priors, {LevelCalibration.Photographers} photographers with {LevelCalibration.Setups} setups each (half point and steepness of photographers correlated, half points of setups, ceiling
            estimated), their frames shot ({LevelCalibration.Frames} at each of five speeds), and the model fitted to them. Where the truth lies in each posterior, as a share
            below it, is then a uniform number. The largest distance of the shares' distribution function from that of a uniform number (the
            law: at most {Allowed}; of as many uniform numbers it exceeds {1.36
                / Math.Sqrt(parameters[0].Shares.Length):0.000} by chance once in twenty times):

            | parameter | largest distance |
            |---|---:|

            """
        );
        foreach (var (name, shares) in parameters)
            page.Append(CultureInfo.InvariantCulture, $"| {name} | {LevelCalibration.Distance(shares):0.000} |\n");
        page.Append(
            CultureInfo.InvariantCulture,
            $"\nMade by `dotnet run -c Release --project laws/Handhold.Laws -- docs/laws {20 * parameters[0].Shares.Length} calibration`, seed {LevelCalibration.Seed}.\n"
        );
        return page.ToString();
    }
}
