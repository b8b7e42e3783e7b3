using System.Globalization;
using Handhold.Randomness;

namespace Handhold.Laws;

/// <summary>Tables of every kind that can be shot: few frames, all or nothing, rising, one speed, several days, with and without bursts.</summary>
internal static class RandomTables
{
    /// <summary>A table with one row for each burst (or frame, where bursts are not recorded).</summary>
    internal static FrameTable Draw(RandomStream stream)
    {
        var speeds = 1 + Below(stream, 9);
        var sessions = 1 + Below(stream, 3);
        var (burstOf, bursts) = (1 + Below(stream, 4), 1 + Below(stream, 3));
        var named = Below(stream, 3) > 0;
        var fastest = -13 + 12 * stream.Uniform();
        var step = 0.3 + 1.7 * stream.Uniform();
        var (half, steepness) = (fastest + step * speeds * stream.Uniform(), Steepness(stream));
        List<FrameCell> rows = [];
        for (var session = 0; session < sessions; session++)
        {
            for (var i = 0; i < speeds * bursts; i++)
            {
                var x = fastest + step * (i / bursts);
                var rate = 1 / (1 + Math.Exp(-steepness * (half - x)));
                var keepers = Enumerable.Range(0, burstOf).Count(_ => stream.Happens(rate));
                rows.Add(
                    new(ShutterSpeed.FromLog2Seconds(x), burstOf, keepers)
                    {
                        Conditions = new()
                        {
                            Session = sessions == 1 ? null : Label(session),
                            Burst = named ? Label(i) : null,
                            EquivalentFocalLength = 50,
                            Criterion = Criterion.Print,
                        },
                    }
                );
            }
        }
        return [.. rows];
    }

    /// <summary>The same rows in another order.</summary>
    internal static FrameTable Shuffle(FrameTable table, RandomStream stream) => [.. table.OrderBy(_ => stream.Bits())];

    /// <summary>The same frames, a row each.</summary>
    internal static FrameTable Unpool(FrameTable table) =>
        [
            .. table.SelectMany(row =>
                Enumerable
                    .Range(0, row.Frames)
                    .Select(i => new FrameCell(row.Exposure, 1, i < row.Keepers ? 1 : 0) { Conditions = row.Conditions })
            ),
        ];

    /// <summary>The same frames with every exposure slower by so many stops.</summary>
    internal static FrameTable Shift(FrameTable table, double stops) =>
        [
            .. table.Select(row => new FrameCell(ShutterSpeed.FromLog2Seconds(row.Exposure.Log2Seconds + stops), row.Frames, row.Keepers)
            {
                Conditions = row.Conditions,
            }),
        ];

    private static double Steepness(RandomStream stream) =>
        Below(stream, 6) switch
        {
            0 => 1e3, // all or nothing
            1 => -1, // the wrong way round
            2 => 0, // exposure does not matter
            _ => 0.5 + 2.5 * stream.Uniform(),
        };

    private static int Below(RandomStream stream, int end) => (int)(end * stream.Uniform());

    private static string Label(int number) => number.ToString(CultureInfo.InvariantCulture);
}
