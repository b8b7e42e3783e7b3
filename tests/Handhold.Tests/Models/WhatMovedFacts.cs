using Handhold.Models;

namespace Handhold.Tests.Models;

public class WhatMovedFacts
{
    /// <summary>Independent blurs add in quadrature: half a stop where the subject moves as fast as the camera, 1.16 where twice as fast (closed form).</summary>
    [Theory]
    [InlineData(1, 0.5)]
    [InlineData(2, 1.161)]
    public void A_subject_costs_half_a_stop_where_it_moves_as_fast_as_the_camera(double ratio, double stops)
    {
        Setting still = new([], [], [], null, -1, null);
        var moving = still with { Subject = -5 - Math.Log2(ratio) };
        Assert.Equal(stops, still.HalfPoint(-5, []) - moving.HalfPoint(-5, []), 1e-3);
    }

    /// <summary>
    /// Translation and rotation blur alike, each costing half a stop of the other, at m / (1 + m) = f w / v: f in mm, w = 0.03 rad/s or a sixteenth with a
    /// stabiliser of 4 stops, v in mm/s; worked by hand.
    /// </summary>
    [Theory]
    [InlineData(100, 0, 8, 0.6)]
    [InlineData(50, 0, 8, 0.23)]
    [InlineData(100, 4, 8, 0.024)]
    [InlineData(100, 4, 2.2, 0.0932)]
    public void Translation_catches_up_with_rotation_at_a_magnification(double focal, double stops, double handSpeed, double magnification)
    {
        const double Blur = 0.03; // mm
        Setting rotationAlone = new([(1, 1)], [], [], null, 0, null);
        var both = rotationAlone with { Translation = Math.Log2(Blur / magnification) };
        var tau0 = Math.Log2(Blur / (focal * (1 + magnification) * 0.03));
        double[] effects = [Math.Log2(handSpeed), stops];
        Assert.Equal(0.5, rotationAlone.HalfPoint(tau0, effects) - both.HalfPoint(tau0, effects), 0.01);
    }

    /// <summary>A subject of known speed alone sets the half point to the exposure that blurs it by as much as is permitted.</summary>
    [Fact]
    public void A_subject_of_known_speed_stops_where_action_does()
    {
        var (blur, magnification, speed) = (30.0, 0.5, 20.0);
        var conditions = new Conditions { Criterion = Criterion.Print, Magnification = magnification };
        var moved = WhatMoved.Of(
            KeeperModel.Default,
            [Moving(conditions with { SubjectSpeed = 0 }), Moving(conditions with { SubjectSpeed = speed })],
            "Curve"
        );
        var subject = moved.Read(conditions with { SubjectSpeed = speed }).Subject;
        Assert.Equal(StoppedAction.SlowestExposure(blur, magnification, speed).Log2Seconds, subject!.Value, 1e-9);
        Assert.Null(moved.Read(conditions with { SubjectSpeed = 0 }).Subject);

        static FrameCell Moving(Conditions conditions) => new(ShutterSpeed.OneOver(60), 2, 1) { Conditions = conditions };
    }

    /// <summary>A single level of one's own beside still subjects has a shift, not a sum of zero over itself.</summary>
    [Fact]
    public void A_motion_of_ones_own_is_measured_against_still_subjects()
    {
        var conditions = Conditions.None;
        var moved = WhatMoved.Of(
            KeeperModel.Default,
            [
                new(ShutterSpeed.OneOver(60), 2, 1) { Conditions = conditions with { SubjectMotion = "still" } },
                new(ShutterSpeed.OneOver(60), 2, 1) { Conditions = conditions with { SubjectMotion = "galloping" } },
            ],
            "Curve"
        );
        Assert.Equal(-3, moved.Read(conditions with { SubjectMotion = "galloping" }).HalfPoint(-2, [-1]), 1e-12);
        Assert.Equal(-2, moved.Read(conditions with { SubjectMotion = "still" }).HalfPoint(-2, [-1]), 1e-12);
    }

    [Fact]
    public void A_term_shifts_the_half_point_by_its_effect_and_a_product_with_the_exposure_the_steepness()
    {
        Setting setting = new([(0, 2)], [(1, 1)], [(2, 0.5)], null, -1, null);
        Assert.Equal(-5 + 2 * 0.25 - 1, setting.HalfPoint(-5, [0.25, -1, 0.4]), 1e-12);
        Assert.Equal(0.2, setting.Steeper([0.25, -1, 0.4]), 1e-12);
    }

    [Fact]
    public void The_middle_of_a_numeric_column_leaves_tau0_where_it_is()
    {
        var model = KeeperModel.Default with { Terms = ["wind"] };
        var moved = WhatMoved.Of(model, [Cell("wind", "2"), Cell("wind", "6")], "Curve");
        double[] effect = [0.3];
        Assert.Equal(-5 - 2 * 0.3, moved.Read(Conditions.None.With("wind", "2")).HalfPoint(-5, effect), 1e-12);
        Assert.Equal(-5 + 2 * 0.3, moved.Read(Conditions.None.With("wind", "6")).HalfPoint(-5, effect), 1e-12);
        Assert.Equal(1.5 / 4, moved.Effects[0].Prior.StandardDeviation, 1e-12);
    }

    [Fact]
    public void Levels_of_a_column_sum_to_zero()
    {
        var moved = WhatMoved.Of(
            KeeperModel.Default with
            {
                Terms = ["grip"],
            },
            [Cell("grip", "a"), Cell("grip", "b"), Cell("grip", "c")],
            "Curve"
        );
        double[] effects = [0.7, -1.1, 0.2];
        var sum = new[] { "a", "b", "c" }.Sum(level => moved.Read(Conditions.None.With("grip", level)).HalfPoint(0, effects));
        Assert.Equal(0, sum, 1e-12);
        var refused = Assert.Throws<ConditionsException>(() => moved.Read(Conditions.None.With("grip", "d")));
        Assert.Contains("grip", refused.Message, StringComparison.Ordinal);
        Assert.Throws<ConditionsException>(() => moved.Read(Conditions.None));
    }

    [Fact]
    public void Each_mode_of_a_stabiliser_has_an_effect_of_its_own()
    {
        var moved = WhatMoved.Of(KeeperModel.Default, [Stabilised("off", 0), Stabilised("lens", 4), Stabilised("panning", 3)], "Curve");
        Assert.Equal(["stabiliser=lens", "stabiliser=panning"], moved.Effects.Select(e => e.Name));
        Assert.Equal(
            -5 + 4 * 0.5,
            moved.Read(Conditions.None with { StabiliserMode = "lens", StabiliserStops = 4 }).HalfPoint(-5, [0.5, 9]),
            1e-12
        );
        Assert.Equal(-5, moved.Read(Conditions.None with { StabiliserMode = "off" }).HalfPoint(-5, [0.5, 9]), 1e-12);
        Assert.Throws<ConditionsException>(() => moved.Read(Conditions.None with { StabiliserMode = "body", StabiliserStops = 4 }));
    }

    private static FrameCell Stabilised(string mode, double stops) =>
        new(ShutterSpeed.OneOver(60), 2, 1)
        {
            Conditions = new() { StabiliserMode = mode, StabiliserStops = stops },
        };

    private static FrameCell Cell(string column, string value) =>
        new(ShutterSpeed.OneOver(60), 2, 1) { Conditions = Conditions.None.With(column, value) };
}
