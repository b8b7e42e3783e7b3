using Handhold.Models;

namespace Handhold.Tests.Exposure;

public class WorkedBlurFacts
{
    [Fact]
    public void Moving_subjects_need_the_speeds_that_the_worked_table_prints()
    {
        foreach (var row in GoldenFolder.Rows("subject-blur", "expected.csv"))
        {
            var slowest = StoppedAction.SlowestExposure(row.Number("permitted_um"), row.Number("magnification"), row.Number("speed_mm_s"));
            Assert.Equal(row.Number("seconds"), slowest.Seconds, 1e-12 * row.Number("seconds"));
            Assert.Equal(ShutterSpeed.Parse(row["printed"]).Seconds, slowest.Seconds, 0.02 * slowest.Seconds);
        }
    }

    /// <summary>Rotation and translation as the model adds them: half points are minus the logarithms of the blurs.</summary>
    [Fact]
    public void What_a_stabiliser_of_rotation_keeps_up_close_is_in_the_quadrature()
    {
        foreach (var row in GoldenFolder.Rows("stabiliser-close-up", "expected.csv"))
        {
            Setting setting = new([(0, 1)], [], [], -Math.Log2(row.Number("translation_um")), HandSpeed: 1, Subject: null);
            var rotation = -Math.Log2(row.Number("rotation_um"));
            var left = setting.HalfPoint(rotation, [4, 0]) - setting.HalfPoint(rotation, [0, 0]);
            Assert.Equal(row.Number("stops"), left, 1e-12);
            Assert.Equal(row.Number("printed"), left, 0.06);
            Assert.Equal(row.Number("printed_rotation_um"), row.Number("rotation_um"), 0.5);
        }
    }

    /// <summary>The model lays these conditions out so that a frame is as blurred as permitted, 30 µm on a print, at its half point.</summary>
    [Fact]
    public void Half_points_of_a_lens_of_100_mm_are_where_the_worked_blurs_reach_what_is_permitted()
    {
        var rows = GoldenFolder.Rows("stabiliser-close-up", "expected.csv");
        Conditions Under(double magnification, double stops) =>
            new()
            {
                Criterion = Criterion.Print,
                EquivalentFocalLength = 100,
                Magnification = magnification,
                StabiliserStops = stops,
            };
        var moved = WhatMoved.Of(
            KeeperModel.Default,
            [
                .. from magnification in rows.Select(r => r.Number("magnification")).Distinct()
                from stops in new[] { 0.0, 4 }
                select new FrameCell(ShutterSpeed.OneOver(125), 2, 1) { Conditions = Under(magnification, stops) },
            ],
            "Curve"
        );
        foreach (var row in rows)
        {
            double[] effects =
            [
                .. moved.Effects.Select(e =>
                    e.Name == "magnification" || e.Name.StartsWith("stabiliser", StringComparison.Ordinal)
                        ? 1
                        : Math.Log2(row.Number("hand_mm_s"))
                ),
            ];
            var far = Math.Log2(0.030 / (100 * 0.03)); // s, 30 µm at 100 mm and 0.03 rad/s
            double HalfPoint(double stops) => moved.Read(Under(row.Number("magnification"), stops)).HalfPoint(far, effects);
            var blur = double.Hypot(row.Number("rotation_um"), row.Number("translation_um")); // in 1/125 s
            Assert.Equal(Math.Log2(30 / blur / 125), HalfPoint(0), 1e-12);
            Assert.Equal(row.Number("stops"), HalfPoint(4) - HalfPoint(0), 1e-12);
        }
    }
}
