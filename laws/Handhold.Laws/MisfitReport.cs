using System.Globalization;
using System.Text;

namespace Handhold.Laws;

/// <summary>The table of misfit alarms, as it is committed.</summary>
internal static class MisfitReport
{
    internal static string Page(
        int wellPosed,
        double alarms,
        int dipped,
        IEnumerable<(int FramesASpeed, double Small, double Large)> powers
    )
    {
        StringBuilder page = new();
        page.Append(
            CultureInfo.InvariantCulture,
            $"""
            # When does `curveDoesNotFit` speak up?

            False alarms: in {wellPosed} tests of worlds drawn from the default priors (seven speeds one stop apart, six frames a speed in two bursts
            of 3, on one day), where the curve is right by construction, it was raised in {alarms:P2} (Monte Carlo error {MonteCarlo.Error(
                alarms,
                wellPosed
            ):P2}). The law: at most 1 %.

            Power: one curve (half point 1/20 s, 1.6 logits a stop, ceiling 0.97, usual luck) whose rate at the middle of the seven speeds, 1/40 s, is
            lower than the curve says by a dip, {dipped} tests for each number of frames, in bursts of 3:

            | frames a speed | raised at a dip of {100 * Misfit.Dips[0]:0} points | at a dip of {100 * Misfit.Dips[1]:0} points |
            |---:|---:|---:|

            """
        );
        foreach (var (frames, small, large) in powers)
        {
            page.Append(
                CultureInfo.InvariantCulture,
                $"| {frames} | {small:P1} ± {MonteCarlo.Error(small, dipped):P1} | {large:P1} ± {MonteCarlo.Error(large, dipped):P1} |\n"
            );
        }
        page.Append(
            CultureInfo.InvariantCulture,
            $"""

            ± is one Monte Carlo error. A dip is hard to see in few frames, since the other speeds leave what to expect in doubt: silence is no proof that the curve fits.

            Made by `dotnet run -c Release --project laws/Handhold.Laws -- docs/laws 10000 misfit`, seed {Misfit.Seed}, generator `{Randomness.Seed.Generator}`.

            """
        );
        return page.ToString();
    }
}
