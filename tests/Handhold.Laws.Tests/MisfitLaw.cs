namespace Handhold.Laws.Tests;

/// <summary>The short form of the law on alarms; the full form is the program laws/Handhold.Laws.</summary>
public class MisfitLaw
{
    private const int Threads = 2;

    [Fact]
    public void A_curve_that_fits_is_seldom_said_not_to() => Assert.InRange(Misfit.FalseAlarms(300, Threads), 0, 0.01);

    [Theory]
    [InlineData(0.2, 0.03)]
    [InlineData(0.4, 0.6)]
    public void A_dip_in_many_frames_is_told(double dip, double atLeast) =>
        Assert.InRange(Misfit.Power(framesASpeed: 48, dip, 100, Threads), atLeast, 1);

    [Fact]
    public void The_laws_alarm_is_the_status_that_a_fit_carries()
    {
        var alarms = 0;
        for (var i = 0; i < 4; i++)
        {
            var table = Misfit.Dipped(framesASpeed: 48, dip: 0.25, Randomness.Seed.From(Misfit.Seed).Stream(i));
            var told = Misfit.Model.Fit(table).Only.Statuses.Any(s => s.Code == StatusCode.CurveDoesNotFit);
            Assert.Equal(told, Misfit.IsAlarming(table));
            alarms += told ? 1 : 0;
        }

        Assert.InRange(alarms, 1, 3);
    }

    [Fact]
    public void Levels_that_obey_the_model_are_seldom_said_not_to() => Assert.InRange(LevelMisfit.Alarms(25, Threads), 0, 0.01);

    [Fact]
    public void A_speed_that_loses_six_in_ten_keepers_in_all_hands_is_told_of_some_clubs() =>
        Assert.InRange(LevelMisfit.Alarms(20, Threads, dip: 0.6), 0.25, 1);
}
