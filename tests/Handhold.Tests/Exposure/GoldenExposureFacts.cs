using System.Globalization;
using static Handhold.ShutterSpeed;

namespace Handhold.Tests.Exposure;

public class GoldenExposureFacts
{
    [Theory]
    [InlineData("full", Marks.Full)]
    [InlineData("half", Marks.Half)]
    [InlineData("third", Marks.Third)]
    public void Marks_and_the_exact_times_behind_them_are_those_of_the_table(string name, Marks marks)
    {
        var rows = GoldenFolder.Rows("marked-speeds", "expected.csv").Where(row => row["series"] == name).ToList();
        Assert.Equal(rows.Select(row => row["mark"]), MarkedSpeeds.Series(marks).Select(mark => mark.ToExactText()));
        foreach (var row in rows)
        {
            var mark = Parse(row["mark"]);
            var exact = MarkedSpeeds.Exact(mark, marks);
            Assert.Equal(row.Number("seconds"), mark.Seconds);
            AssertClose(row.Number("exact_seconds"), exact.Seconds, 1e-15);
            Assert.Equal(row.Number("marked_over_exact_stops"), mark.SlowerThan(exact).Value, tolerance: 5.001e-5);
        }
    }

    [Fact]
    public void Apex_times_stand_for_their_shutter_speeds()
    {
        foreach (var row in GoldenFolder.Rows("apex", "times.csv"))
        {
            var (tv, speed) = (row.Number("tv"), Parse(row["shutter"]));
            Assert.Equal(tv, Apex.TimeValue(speed), ApexTolerance(row["origin"]));
            Assert.Equal(speed, MarkedSpeeds.Nearest(FromApex(tv), Marks.Third));
            Assert.Equal(tv, Apex.TimeValue(FromApex(tv)), 1e-14);
        }
    }

    [Fact]
    public void Apex_apertures_stand_for_their_f_numbers_and_add_to_the_times()
    {
        foreach (var row in GoldenFolder.Rows("apex", "apertures.csv"))
        {
            var (av, fNumber) = (row.Number("av"), row.Number("f_number"));
            Assert.Equal(av, Apex.ApertureValue(fNumber), ApexTolerance(row["origin"]));
            Assert.Equal(Apex.ApertureValue(fNumber) + 7, Apex.ExposureValue(fNumber, OneOver(128)));
        }
    }

    [Fact]
    public void Action_stops_at_the_handbook_s_speeds()
    {
        foreach (var row in GoldenFolder.Rows("action-stopping", "expected.csv"))
        {
            var (m, v) = (row.Number("magnification"), row.Number("speed_mm_s"));
            var printed = Parse(row["across"]);
            AssertClose(m, Magnification.FromLensDistance(50, row.Number("distance_m")), 1e-12);
            AssertClose(printed.Seconds, StoppedAction.SlowestExposure(row.Number("implied_blur_um"), m, v).Seconds, 1e-12);
            Assert.Equal(printed, MarkedSpeeds.Nearest(StoppedAction.SlowestExposure(63, m, v), Marks.Full));
        }
    }

    [Fact]
    public void The_handbook_grants_diagonal_motion_a_full_stop_where_geometry_grants_half()
    {
        var across = StoppedAction.SlowestExposure(60, 0.01, 2235.2);
        Assert.Equal(0.5, StoppedAction.SlowestExposure(60, 0.01, 2235.2, 45).SlowerThan(across).Value, 1e-12);
        foreach (var row in GoldenFolder.Rows("action-stopping", "table.csv"))
        {
            Assert.Equal(1, Parse(row["diagonal"]).SlowerThan(Parse(row["across"])).Value, 0.1);
            Assert.Equal(2, Parse(row["toward"]).SlowerThan(Parse(row["across"])).Value, 0.1);
        }
    }

    [Fact]
    public void Magnification_follows_from_either_distance()
    {
        foreach (var row in GoldenFolder.Rows("magnification", "expected.csv"))
        {
            var focal = row.Number("focal_mm");
            var fromSensor = Magnification.FromSensorDistance(focal, row.Number("distance_m"));
            AssertClose(row.Number("magnification"), fromSensor, 1e-12);
            AssertClose(row.Number("magnification"), Magnification.FromLensDistance(focal, row.Number("lens_distance_m")), 1e-12);
            if (row["printed"] is { Length: > 0 } printed)
            {
                var digits = printed.Contains('.', StringComparison.Ordinal) ? printed.Split('.')[1].Length : 0;
                Assert.Equal(printed, fromSensor.ToString("F" + digits, CultureInfo.InvariantCulture));
            }
        }
    }

    [Fact]
    public void The_rule_of_thumb_is_one_over_the_focal_length_and_faster_close_up()
    {
        foreach (var row in GoldenFolder.Rows("reciprocal-rule", "expected.csv"))
        {
            var (focal, m) = (row.Number("focal_eq_mm"), row.Number("magnification"));
            Assert.Equal(Parse(row["shutter"]), FocalLength.ReciprocalRule(focal, m));
            if (m == 0)
                Assert.Equal(Parse(row["shutter"]), FocalLength.ReciprocalRule(focal));
        }
    }

    private static double ApexTolerance(string origin) =>
        origin switch
        {
            "standard" => 0.1,
            "photograph with exact logarithms" => 1e-6,
            "photograph in 32nds of a stop" => 1 / 64.0,
            _ => throw new ArgumentOutOfRangeException(nameof(origin), origin, "No tolerance is stated for this origin."),
        };

    private static void AssertClose(double expected, double actual, double relative) =>
        Assert.Equal(expected, actual, tolerance: relative * Math.Abs(expected));
}
