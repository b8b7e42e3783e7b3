using Handhold.Randomness;
using Handhold.Simulation;

namespace Handhold.Tests;

public class ShakyHandsFacts
{
    private static readonly ShakyHands s_usual = new() { FocusMisses = 0 };
    private const int Frames = 4000;

    [Fact]
    public void Slower_frames_are_blurred_more_often()
    {
        double[] rates = [.. new[] { 250, 60, 30, 15, 4 }.Select(d => Rate(s_usual, ShutterSpeed.OneOver(d)))];
        Assert.Equal(rates.OrderDescending(), rates);
        Assert.True(rates[0] > 0.99);
        Assert.True(rates[^1] < 0.05);
    }

    /// <summary>While the path is straight, blur is focal length times angle, so twice the focal length at half the exposure is the same frame.</summary>
    [Fact]
    public void A_fast_frame_of_twice_the_focal_length_is_a_frame_of_half_the_exposure()
    {
        var (one, other) = (
            Rate(s_usual, ShutterSpeed.OneOver(60)),
            Rate(s_usual with { EquivalentFocalLength = 100 }, ShutterSpeed.OneOver(120))
        );
        Assert.Equal(one, other, 4 * Math.Sqrt(0.5 / Frames));
    }

    /// <summary>Two axes of Gaussian angular speed s each and a straight path: P(sharp) = 1 - exp(-c² / (2 f² s² t²)), the law of Rayleigh.</summary>
    [Fact]
    public void Fast_frames_follow_the_law_of_two_gaussian_axes()
    {
        var hands = s_usual with { Drift = 1, Tremor = 0, EquivalentFocalLength = 400 };
        var s = Math.PI / 180;
        foreach (var denominator in new[] { 125, 250, 500 })
        {
            var blur = 400 * s / denominator;
            Assert.Equal(
                1 - Math.Exp(-0.03 * 0.03 / (2 * blur * blur)),
                Rate(hands, ShutterSpeed.OneOver(denominator)),
                0.03 // six waves of random phase are not quite Gaussian, and 4 standard errors
            );
        }
    }

    [Fact]
    public void Focus_and_subject_take_their_share()
    {
        Assert.Equal(0.7, Rate(s_usual with { FocusMisses = 0.3 }, ShutterSpeed.OneOver(2000)), 4 * Math.Sqrt(0.21 / Frames));
        var moving = s_usual with { SubjectMoves = 0.4, SubjectSpeed = 1000 };
        Assert.Equal(0.6, Rate(moving, ShutterSpeed.OneOver(2000)), 4 * Math.Sqrt(0.24 / Frames));
    }

    [Fact]
    public void A_day_of_luck_is_a_day_of_slower_speeds()
    {
        ShootPlan plan = new()
        {
            Speeds = [ShutterSpeed.OneOver(15)],
            Bursts = 100,
            BurstOf = 4,
            Sessions = ["1", "2"],
        };
        var table = (s_usual with { SessionLuck = 1 }).Shoot(plan, Seed.From(2).Stream(0));
        Assert.Equal(800, table.Count);
        Assert.Equal(["1", "2"], table.Select(f => f.Conditions.Session).Distinct());
        Assert.Equal(table, (s_usual with { SessionLuck = 1 }).Shoot(plan, Seed.From(2).Stream(0)));
    }

    [Fact]
    public void A_judge_without_knowledge_calls_half_of_them_keepers()
    {
        var blind = s_usual with
        {
            Judging = new() { Sensitivity = 0.5, Specificity = 0.5 },
        };
        var table = blind.Shoot(
            new()
            {
                Speeds = [ShutterSpeed.OneOver(2000)],
                Bursts = 1000,
                BurstOf = 4,
            },
            Seed.From(2).Stream(0)
        );
        Assert.Equal(0.5, table.Sum(f => f.Keepers) / 4000.0, 4 * Math.Sqrt(0.25 / 4000));
    }

    private static double Rate(ShakyHands hands, ShutterSpeed at) => hands.RateAt(at, Frames, Seed.From(1).Stream(0));
}
