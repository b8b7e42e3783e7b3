using System.Collections.Immutable;
using System.Runtime.Intrinsics;
using Handhold.Fitting;
using Handhold.Kernels;
using Handhold.Models;

namespace Handhold.Tests.Fitting;

/// <summary>What frames of a level give, eight places at once, against the curves taken one at a time, and derivatives against central differences.</summary>
public class LevelCurvesFacts
{
    private static ImmutableArray<Setting> Settings { get; } = [new([], [], [], null, 0, null), new([(0, 1)], [], [(1, 1)], null, 0, null)];

    private static double[] Effects { get; } = [0.7, -0.4];

    private static GaussRule Rule { get; } = GaussRule.Hermite(7);

    private static Vector512<double> Shifts { get; } = Vector512.Create(-3, -1, -0.2, 0, 0.3, 1, 2, 30);

    private static Vector512<double> Steepenings { get; } = Vector512.Create(0.5, -0.3, 0, 0.1, 0.2, -1, 0.4, 0.3);

    public static TheoryData<string, int> Frames { get; } =
        new()
        {
            { "bursts", 1 },
            { "bursts", 4 }, // where rejects are unlikeliest chances are too small for numbers
            { "bursts", 900 }, // and so they are everywhere
            { "afresh", 1 },
        };

    [Theory]
    [MemberData(nameof(Frames))]
    public void Log_likelihoods_are_those_of_one_curve_at_a_time(string how, int times)
    {
        foreach (var (ceiling, floor) in new[] { (1, 0), (0.96, 0.02) })
        {
            var (point, part) = (Point(ceiling, floor), Part(how, times));
            var (log, slopes) = Both(point, part, Shifts, Steepenings);
            for (var lane = 0; lane < Vector512<double>.Count; lane++)
            {
                var expected = OneAtATime(point, part, Shifts[lane], Steepenings[lane]);
                Assert.Equal(1, log[lane] / expected, 1e-11);
                Assert.Equal(1, slopes.Value[lane] / expected, 1e-11);
            }
        }
    }

    [Theory]
    [MemberData(nameof(Frames))]
    public void Derivatives_are_those_of_differences(string how, int times)
    {
        var by = 1e-4 / times; // the more frames, the faster shares of nodes change
        var (step, part) = (Vector512.Create(by), Part(how, times));
        foreach (var (ceiling, floor) in new[] { (1, 0), (0.96, 0.02) })
        {
            var at = Slopes(0, 0);
            var (right, left, up, down) = (Slopes(1, 0), Slopes(-1, 0), Slopes(0, 1), Slopes(0, -1));
            for (var lane = 0; lane < Vector512<double>.Count; lane++)
            {
                Near(right.Value[lane] - left.Value[lane], at.T[lane]);
                Near(up.Value[lane] - down.Value[lane], at.L[lane]);
                Near(right.T[lane] - left.T[lane], at.TT[lane]);
                Near(right.L[lane] - left.L[lane], at.TL[lane]);
                Near(up.L[lane] - down.L[lane], at.LL[lane]);
            }

            LevelSlopes Slopes(int shifts, int steepenings) =>
                Both(Point(ceiling, floor), part, Shifts + step * shifts, Steepenings + step * steepenings).Slopes;
        }

        void Near(double difference, double derivative) =>
            Assert.Equal(difference / (2 * by), derivative, 1e-5 * (times + Math.Abs(derivative)));
    }

    private static TermPoint Point(double ceiling, double floor) => new(-5, Math.Log(1.7), ceiling, floor, 0, 0.3);

    /// <summary>Two bursts whose frames come under two settings in turn, or frames held afresh.</summary>
    private static LevelPart Part(string how, int times)
    {
        ImmutableArray<TermCell> one = [new(0, -6, 3 * times, 3 * times), new(1, -5, 4 * times, times)];
        ImmutableArray<TermCell> other = [new(1, -4, 2 * times, 0), new(0, -5, 3 * times, 2 * times)];
        return how == "bursts" ? new([], [], null, [new(one), new(other)], []) : new([], [], null, [], [.. one, .. other]);
    }

    private static (Vector512<double> Log, LevelSlopes Slopes) Both(
        TermPoint point,
        LevelPart part,
        Vector512<double> shift,
        Vector512<double> steepening
    )
    {
        LevelCurves curves = new(point, Effects, Settings, Rule);
        LevelSlopes slopes = default;
        curves.Add(part, shift, steepening, ref slopes);
        return (curves.Log(part, shift, steepening), slopes);
    }

    private static double OneAtATime(TermPoint point, LevelPart part, double shift, double steepening)
    {
        TermCurves curves = new(
            point with
            {
                LogSteepness = point.LogSteepness + steepening,
            },
            Effects,
            Settings,
            Rule,
            stackalloc double[TermCurves.Room(Settings, Rule)]
        );
        var log = 0.0;
        foreach (var burst in part.Bursts)
            log += curves.Log(burst.Cells, shift);
        foreach (var cell in part.Afresh)
            log += curves.LogAfresh(cell, shift);
        return log;
    }
}
