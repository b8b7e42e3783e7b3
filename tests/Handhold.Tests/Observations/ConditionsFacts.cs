namespace Handhold.Tests.Observations;

public class ConditionsFacts
{
    private static Conditions Everything() =>
        new()
        {
            Photographer = "Ada",
            Setup = "50 mm, body off",
            Criterion = Criterion.Print,
            Judge = "Bo",
            Cause = "shake",
            Session = "Tuesday",
            Burst = "7",
            BurstPosition = 2,
            Order = 31,
            FocalLength = 50,
            Crop = 1.5,
            EquivalentFocalLength = 76,
            PixelPitch = 3.9,
            StabiliserStops = 4.5,
            StabiliserMode = "body",
            Support = "wall",
            Magnification = 0.1,
            SubjectDistance = 0.6,
            SubjectMotion = "slight",
            SubjectSpeed = 20,
            Others = Conditions.None.Others.Add("weather", "wind"),
        };

    [Fact]
    public void Every_condition_is_found_by_its_column_name()
    {
        var conditions = Everything();
        Assert.Equal(
            [
                "Ada",
                "50 mm, body off",
                "print",
                "Bo",
                "shake",
                "Tuesday",
                "7",
                "2",
                "31",
                "50",
                "1.5",
                "76",
                "3.9",
                "4.5",
                "body",
                "wall",
                "0.1",
                "0.6",
                "slight",
                "20",
            ],
            Conditions.ColumnNames.Select(column => conditions[column])
        );
        Assert.Equal("wind", conditions["weather"]);
        Assert.Null(conditions["moon"]);
    }

    [Fact]
    public void What_was_not_recorded_is_null() => Assert.All(Conditions.ColumnNames, column => Assert.Null(Conditions.None[column]));

    [Fact]
    public void Conditions_are_equal_when_all_that_was_recorded_is()
    {
        Assert.Equal(Everything(), Everything());
        Assert.Equal(Everything().GetHashCode(), Everything().GetHashCode());
        Assert.NotEqual(Everything(), Everything() with { Others = Conditions.None.Others.Add("weather", "calm") });
    }

    [Fact]
    public void Numbers_out_of_range_are_refused_naming_the_column()
    {
        var error = Assert.Throws<CellException>(() => new Conditions { FocalLength = -50 });
        Assert.Equal("focal_mm: -50 cannot be. Give a finite number above 0, and leave out what was not recorded.", error.Message);
        Assert.Throws<CellException>(() => new Conditions { FocalLength = 0 });
        Assert.Throws<CellException>(() => new Conditions { Crop = double.NaN });
        Assert.Throws<CellException>(() => new Conditions { EquivalentFocalLength = double.PositiveInfinity });
        Assert.Throws<CellException>(() => new Conditions { PixelPitch = -1 });
        Assert.Throws<CellException>(() => new Conditions { StabiliserStops = -1 });
        Assert.Throws<CellException>(() => new Conditions { Magnification = -0.1 });
        Assert.Throws<CellException>(() => new Conditions { SubjectDistance = 0 });
        Assert.Throws<CellException>(() => new Conditions { SubjectSpeed = -1 });
        Assert.Throws<CellException>(() => new Conditions { BurstPosition = 0 });
        Assert.Throws<CellException>(() => new Conditions { Order = double.NaN });
    }

    [Fact]
    public void Blank_labels_are_refused()
    {
        Assert.Throws<CellException>(() => new Conditions { Photographer = "" });
        Assert.Throws<CellException>(() => new Conditions { Others = Conditions.None.Others.Add("weather", " ") });
        Assert.Throws<ArgumentException>(() => new Criterion(" "));
    }

    [Fact]
    public void A_column_with_a_property_is_not_another_column()
    {
        var error = Assert.Throws<CellException>(() => new Conditions { Others = Conditions.None.Others.Add("focal_mm", "50") });
        Assert.StartsWith("focal_mm: this column has a property of its own", error.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void The_equivalent_focal_length_is_the_recorded_one_or_follows_from_the_crop()
    {
        Assert.Equal(76, Everything().EffectiveEquivalentFocalLength);
        Assert.Equal(75, (Everything() with { EquivalentFocalLength = null }).EffectiveEquivalentFocalLength);
        Assert.Null(new Conditions { FocalLength = 50 }.EffectiveEquivalentFocalLength);
    }

    [Fact]
    public void The_magnification_is_the_recorded_one_or_follows_from_the_distance()
    {
        Assert.Equal(0.1, Everything().EffectiveMagnification);
        Assert.Equal(1.0, new Conditions { FocalLength = 100, SubjectDistance = 0.4 }.EffectiveMagnification);
        Assert.Null(new Conditions { SubjectDistance = 0.4 }.EffectiveMagnification);
    }

    [Fact]
    public void A_stabiliser_that_is_off_helps_no_stops()
    {
        Assert.Equal(0, (Everything() with { StabiliserMode = "off" }).EffectiveStabiliserStops);
        Assert.Equal(4.5, Everything().EffectiveStabiliserStops);
        Assert.Null(Conditions.None.EffectiveStabiliserStops);
    }
}
