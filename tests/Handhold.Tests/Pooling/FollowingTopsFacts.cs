using Handhold.Fitting;
using Handhold.Models;

namespace Handhold.Tests.Pooling;

/// <summary>Tops of finest levels that follow numbers above to first order, against tops that are sought.</summary>
public class FollowingTopsFacts
{
    private static KeeperModel Model { get; } =
        KeeperModel.Default with
        {
            Each = [],
            Varies = [new("photographer", VaryingPart.Both), Groups.Nested with { Part = VaryingPart.Both }],
        };

    private static FrameTable Club { get; } = Groups.Club(3);

    private static VaryingDensity Density()
    {
        var rows = CurveRows.Split(Model, Club)[0];
        var moved = rows.Moved(Model);
        var spreads = LevelSpread.Of(Model, moved, rows.Data.Cells, "");
        return new(Model, moved, spreads, VaryingFrames.Of(moved, spreads, rows.Data, Model.Luck));
    }

    [Fact]
    public void They_move_as_those_that_are_sought_by_every_number_above()
    {
        const double Step = 1e-3;
        var density = Density();
        var integral = density.At(density.Read([.. Enumerable.Repeat(0.4, density.Dimension)]));
        foreach (var block in density.Frames.Blocks)
        foreach (var level in block.Finest)
        {
            double[] z = [0.6, -0.4, 0.3]; // half point, steepness, day
            var above = new double[2 * density.Frames.Levels[level].Length];
            var here = integral.Integral(level, z, above);
            var top = here.Top(default, 1e-20);
            var moves = here.Moves(top);
            for (var i = 0; i < z.Length; i++)
            {
                var there = (double[])z.Clone();
                there[i] += Step;
                var sought = integral.Integral(level, there, above).Top(top, 1e-20);
                var followed = moves.Follow(top, above);
                Assert.True(Math.Abs(sought.Z0 - top.Z0) > 0.01 * Step && Math.Abs(sought.Z1 - top.Z1) > 1e-4 * Step);
                Assert.Equal(sought.Z0, followed.Z0, 2e-3 * Step);
                Assert.Equal(sought.Z1, followed.Z1, 2e-3 * Step);
            }
        }
    }

    /// <summary>The same nodes above, tops sought at each: where there are pairs of draws for more directions, they are.</summary>
    [Theory]
    [InlineData(0.4)]
    [InlineData(-1)]
    [InlineData(1.5)]
    public void A_block_is_integrated_as_about_tops_that_are_sought(double coordinates)
    {
        var density = Density();
        var point = density.Read([.. Enumerable.Repeat(coordinates, density.Dimension)]);
        IntegralRule sought = IntegralRule.Usual with { Above = new(one: 5, two: 3, more: null, pairs: 1) };
        foreach (var (found, expected) in density.Blocks(point, IntegralRule.Usual).Zip(density.Blocks(point, sought)))
        {
            Assert.NotEqual(expected, found);
            Assert.Equal(expected, found, 0.01); // what the nodes themselves leave
        }
    }
}
