using Handhold.Curves;
using Handhold.Kernels;

namespace Handhold.Tests.Luck;

public class JointLawFacts
{
    /// <summary>Steepness, burst luck and doubt on the day's half point, ceiling, floor, shift of the first frame.</summary>
    public static TheoryData<double, double, double, double, double, double> Curves { get; } =
        new()
        {
            { 1.6, 0.25, 0.45, 0.97, 0, 0 },
            { 1.6, 0.8, 0.9, 1, 0.02, -0.3 },
            { 4, 0.5, 0.2, 0.95, 0, 0 },
            { 0.7, 0.1, 1.5, 1, 0, 0.4 },
            { 2.5, 0, 0.6, 0.98, 0, 0 },
        };

    [Theory]
    [MemberData(nameof(Curves))]
    public void Keepers_over_bursts_of_a_day_not_known_exactly_are_those_of_every_way_they_can_fall(
        double steepness,
        double burst,
        double day,
        double ceiling,
        double floor,
        double first
    )
    {
        CurveAtom atom = new(1, steepness, ceiling, floor, burst, new NormalHalfPoint(-4, day), first);
        RateLaw law = new([atom], AsymptoteCells.None, AsymptoteCells.None);
        foreach (var size in new[] { 1, 3, 8 })
        foreach (var exposure in new[] { -5.0, -3.4 })
        {
            var expected = Enumerated(atom, exposure, size);
            var found = new BurstsLaw(law, exposure).Fewer(expected.Length, 2, size, 2);
            for (var k = 0; k < expected.Length; k++)
                Assert.Equal(expected[k], found[k], 1e-8);
            for (var below = 1; below < 4; below++)
                Assert.Equal(expected.Take(below).Sum(), new BurstsLaw(law, exposure).Fewer(below, 2, size, 2).Sum(), 1e-8);
        }
    }

    // Two bursts and a short one of two frames: each way, at every luck of each burst, on each day, by trapezoid sums of sixteen to the sd.
    private static double[] Enumerated(CurveAtom atom, double exposure, int size)
    {
        var (mean, sd) = ((atom.HalfPoint.Low + atom.HalfPoint.High) / 2, (atom.HalfPoint.High - atom.HalfPoint.Low) / 16);
        var (law, total) = (new double[2 * size + 3], 0.0);
        for (var day = -128; day <= 128; day++)
        {
            var weight = Normal.Density(day / 16.0);
            var distance = mean + sd * day / 16.0 - exposure;
            var (one, rest) = (InBurst(size), InBurst(2));
            for (var i = 0; i <= size; i++)
            for (var j = 0; j <= size; j++)
            for (var k = 0; k <= 2; k++)
                law[i + j + k] += weight * one[i] * one[j] * rest[k];
            total += weight;

            double[] InBurst(int frames)
            {
                var (counts, sum) = (new double[frames + 1], 0.0);
                for (var luck = -128; luck <= 128; luck++)
                {
                    var share = Normal.Density(luck / 16.0);
                    var shift = distance + atom.BurstSd * luck / 16.0;
                    var (keep, miss) = Elementary.Capped(atom.Steepness * shift, atom.Ceiling, atom.Floor);
                    var (keepFirst, missFirst) = Elementary.Capped(atom.Steepness * (shift + atom.FirstShift), atom.Ceiling, atom.Floor);
                    var others = frames == 1 ? [1.0] : Binomial.Masses(frames - 1, keep, miss);
                    for (var k = 0; k < others.Length; k++)
                    {
                        counts[k] += share * missFirst * others[k];
                        counts[k + 1] += share * keepFirst * others[k];
                    }

                    sum += share;
                }

                return Array.ConvertAll(counts, c => c / sum);
            }
        }

        return Array.ConvertAll(law, p => p / total);
    }
}
