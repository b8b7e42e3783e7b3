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
}
