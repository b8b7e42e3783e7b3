using System.Globalization;
using System.Text;

namespace Handhold.Laws;

/// <summary>The table of misfit alarms where levels vary, as it is committed.</summary>
internal static class LevelMisfitReport
{
    internal static string Page(int clubs, double alarms, int dipped, IEnumerable<(double Dip, double Share)> powers)
    {
        StringBuilder page = new();
        page.Append(
            CultureInfo.InvariantCulture,
            $"""
            # When does `curveDoesNotFit` speak up of levels that vary?

            False alarms: in {clubs} clubs drawn from the default priors, half points around 1/23 s within a stop or so (four photographers, a day each, six speeds one stop apart, six frames a speed
            in two bursts of 3), fitted together with half points that vary, it was raised in {alarms:P2} (Monte Carlo error {MonteCarlo.Error(
                alarms,
                clubs
            ):P2}). The law: at most 1 %.

            Power: of {dipped} such clubs each, when 1/16 s, one of the middle speeds, loses a share of its keepers in all hands:

            | of the keepers lost | raised |
            |---:|---:|

            """
        );
        foreach (var (dip, share) in powers)
        {
            page.Append(CultureInfo.InvariantCulture, $"| {dip:P0} | {share:P0} ± {MonteCarlo.Error(share, dipped):P0} |\n");
        }
        page.Append(
            CultureInfo.InvariantCulture,
            $"""

            ± is one Monte Carlo error. Clubs whose half points are fast have few keepers at that speed to lose.

            Made by `dotnet run -c Release --project laws/Handhold.Laws -- docs/laws 20000 misfit-levels`, seed {LevelMisfit.Seed}, generator `{Randomness.Seed.Generator}`.

            """
        );
        return page.ToString();
    }
}
