using System.Globalization;
using System.Text;
using Handhold;
using Handhold.Randomness;
using Handhold.Simulation;

namespace DemoData;

/// <summary>Two invented volunteers photograph an invented museum of clocks, where tripods are not allowed.</summary>
internal static class ClockMuseum
{
    private const long Seed = 20250131;
    private const int Visits = 3;
    private const double SessionLuck = 0.3;
    private const double BurstLuck = 0.2;
    private const double NotJudged = 0.03;

    private static readonly int[] Denominators = [250, 125, 60, 30, 15, 8, 4, 2, 1];

    /// <summary>The whole table, as it is written to shared/demo/clock-museum.csv.</summary>
    internal static string Csv()
    {
        var days = Handhold.Randomness.Seed.From(Seed).Stream(0);
        var luck = Outing.All.Select(o => o.Photographer).Distinct().ToDictionary(p => p, _ => DrawDays(days));
        StringBuilder csv = new();
        csv.Append("# Invented data: simulated by eng/DemoData with seed ")
            .Append(CultureInfo.InvariantCulture, $"{Seed}. Nobody took these frames.\n");
        csv.Append("exposure,keeper,photographer,setup,session,burst,burst_position,");
        csv.Append("focal_eq_mm,stabiliser_stops,stabiliser_mode,magnification,subject_motion,criterion\n");
        for (var i = 0; i < Outing.All.Length; i++)
        {
            var outing = Outing.All[i];
            Append(csv, outing, luck[outing.Photographer], Handhold.Randomness.Seed.From(Seed).Stream(i + 1));
        }
        return csv.ToString();
    }

    private static double[] DrawDays(RandomStream stream) => [.. Enumerable.Range(0, Visits).Select(_ => SessionLuck * stream.Normal())];

    private static void Append(StringBuilder csv, Outing outing, double[] dayLuck, RandomStream stream)
    {
        World world = new()
        {
            HalfPoint = -Math.Log2(outing.HalfPoint),
            Steepness = outing.Steepness,
            Ceiling = outing.Ceiling,
            BurstLuck = BurstLuck,
        };
        ShootPlan plan = new()
        {
            Speeds = [.. Denominators.Where(d => d <= outing.Fastest && d >= outing.Slowest).Select(d => ShutterSpeed.OneOver(d))],
            Bursts = outing.Bursts,
            BurstOf = outing.BurstOf,
        };
        foreach (var visit in outing.Visits)
        {
            foreach (var frame in world.ShootDay(plan, Invariant($"visit {visit}"), dayLuck[visit - 1], stream))
            {
                csv.Append(Line(outing, frame, judged: !stream.Happens(NotJudged))).Append('\n');
            }
        }
    }

    private static string Line(Outing outing, FrameCell frame, bool judged)
    {
        var denominator = Math.Round(1 / frame.Exposure.Seconds);
        var exposure = denominator == 1 ? "1 s" : Invariant($"1/{denominator}");
        var keeper =
            !judged ? ""
            : frame.Keepers == 1 ? "yes"
            : "no";
        var (setup, where) = (outing.Setup, frame.Conditions);
        return Invariant($"{exposure},{keeper},{outing.Photographer},{setup.Name},{where.Session},{where.Burst},{where.BurstPosition},")
            + Invariant(
                $"{setup.FocalLength},{setup.StabiliserStops},{setup.StabiliserMode},{setup.Magnification},{setup.Motion},{setup.Criterion}"
            );
    }

    private static string Invariant(FormattableString text) => FormattableString.Invariant(text);
}
