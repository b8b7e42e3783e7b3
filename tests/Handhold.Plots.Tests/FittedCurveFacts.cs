using static Handhold.ShutterSpeed;

namespace Handhold.Plots.Tests;

public class FittedCurveFacts
{
    /// <summary>Without the second look at the priors, which fits twice more.</summary>
    private static readonly AnswerOptions Quick = AnswerOptions.Default with { CheckPriors = false };

    [Fact]
    public void A_scene_says_what_the_curve_answers()
    {
        var curve = Fit((60, 6, 6), (30, 6, 5), (15, 6, 3), (8, 6, 0));
        var scene = CurveScene.Of(
            curve,
            new()
            {
                TargetRate = 0.8,
                ShowCeiling = true,
                Answers = Quick,
            }
        );
        var answer = curve.ExposureFor(0.8, Quick);
        Assert.Equal(answer.Exposure!.Value.Log2Seconds, scene.Target.Log2Seconds);
        Assert.Equal(answer.Set.Pieces.Select(p => (p.Lower, p.Upper)), scene.Target.Pieces);
        Assert.Equal(CurveWords.Speed(scene.Target.Log2Seconds!.Value, Marks.Third), scene.Title.Split(" at ")[^1]);
        Assert.Equal([(6, 6), (5, 6), (3, 6), (0, 6)], scene.Observed.Select(o => (o.Keepers, o.Frames)));
        Assert.Equal(BinomialInterval.Wilson(5, 6).Lower, scene.Observed[1].Lower);
        Assert.Equal(curve.Parameters.Single(p => p.Name == "ceiling").Median, scene.Ceiling);
        var rate = curve.RateAt(OneOver(15)).Rate!;
        var nearest = scene.Log2Seconds.Select((x, i) => (Distance: Math.Abs(x - OneOver(15).Log2Seconds), i)).Min().i;
        Assert.Equal(rate.Median, scene.Median[nearest], 0.03);
        Assert.Equal(rate.Interval.Upper, scene.Upper[nearest], 0.03);
    }

    [Fact]
    public void A_curve_with_terms_shows_the_frames_shot_under_the_conditions_asked()
    {
        FrameTable table =
        [
            .. new[] { ("off", 60, 6), ("off", 30, 3), ("off", 15, 0), ("lens", 30, 6), ("lens", 15, 4), ("lens", 8, 1) }.Select(
                c => new FrameCell(OneOver(c.Item2), 6, c.Item3) { Conditions = new() { StabiliserMode = c.Item1 } }
            ),
        ];
        var answers = Quick with { Conditions = new() { StabiliserMode = "lens" } };
        var scene = CurveScene.Of(KeeperModel.Default.Fit(table).Only, new() { Answers = answers });
        Assert.Equal([(6, 6), (4, 6), (1, 6)], scene.Observed.Select(o => (o.Keepers, o.Frames)));
    }

    [Theory]
    [InlineData("off", false)]
    [InlineData("lens", true)]
    public void Curves_of_levels_say_where_frames_were_shot_under_other_conditions(string mode, bool differ)
    {
        FrameTable table =
        [
            .. from photographer in new[] { "ada", "bo", "cy" }
            from shot in new[] { ("off", 60, 6), ("off", 30, 4), ("off", 15, 1), (mode, 30, 5), (mode, 15, 3), (mode, 8, 1) }
            select new FrameCell(OneOver(shot.Item2), 6, Math.Min(6, shot.Item3 + photographer[0] - 'a'))
            {
                Conditions = new() { Photographer = photographer, StabiliserMode = shot.Item1 },
            },
        ];
        var model = KeeperModel.Default with
        {
            Estimator = Estimator.Likelihood,
            Luck = LuckKind.None,
            Each = [],
            Varies = [new("photographer")],
        };
        var curve = model.Fit(table, cancellation: TestContext.Current.CancellationToken).Only;
        var scenes = LevelCurveScene.Of(curve, LevelGroup.Of(curve, null), PictureOptions.Default);
        Assert.All(scenes, s => Assert.Equal(differ, s.ConditionsDiffer));
        Assert.All(scenes, s => Assert.Equal(differ, s.Words.Subject.Contains("hollow: conditions differ", StringComparison.Ordinal)));
    }

    [Fact]
    public void The_captions_count_the_data_and_name_criterion_estimator_and_day()
    {
        var captions = CurveScene.Of(Fit((60, 6, 6), (30, 6, 5), (15, 6, 3), (8, 6, 0)), new() { Answers = Quick }).Captions;
        Assert.Equal("14 of 24\u00A0frames kept at 4\u00A0speeds in 1\u00A0session. Criterion not recorded.", captions[0]);
        Assert.StartsWith("Curve for another day: posterior, priors-1.", captions[1], StringComparison.Ordinal);
        var today = CurveScene.Of(Fit((60, 6, 6), (8, 6, 0)), new() { Answers = Quick with { Day = Day.Same } }).Captions;
        Assert.StartsWith("Curve for the day of the test:", today[1], StringComparison.Ordinal);
    }

    [Fact]
    public void All_keepers_none_one_speed_and_one_frame_can_be_drawn()
    {
        Assert.StartsWith(
            "More than half are still keepers at 1/15\u00A0s",
            Title(0.5, (125, 6, 6), (60, 6, 6), (30, 6, 6), (15, 6, 6)),
            StringComparison.Ordinal
        );
        Assert.StartsWith(
            "Fewer than 80\u00A0% are keepers even at 1/250\u00A0s",
            Title(0.8, (250, 9, 0), (125, 9, 0), (60, 9, 0)),
            StringComparison.Ordinal
        );
        Title(0.5, (30, 12, 7));
        Title(0.5, (30, 1, 1));
        Title(0.5, (8000, 3, 3), (0.125, 3, 0));
    }

    [Fact]
    public void A_rate_above_the_ceiling_is_said_to_be_out_of_reach()
    {
        var curve = Fit(KeeperModel.Default with { Ceiling = Ceiling.Fixed(0.7) }, (250, 20, 14), (60, 20, 13), (15, 20, 1));
        var scene = CurveScene.Of(curve, new() { TargetRate = 0.8, Answers = Quick });
        Assert.Equal("Probably no shutter speed makes 80\u00A0% of frames keepers", scene.Title);
        Assert.Contains("80\u00A0%: probably not reachable at any speed", new Drawn(scene, 600, 400).LabelTexts);
    }

    [Fact]
    public void A_title_of_the_callers_own_replaces_the_finding() =>
        Assert.Equal(
            "Mine",
            KeeperCurvePlot.Draw(Fit((60, 6, 6), (8, 6, 0)), new() { Title = "Mine", Answers = Quick }).Axes.Title.Label.Text
        );

    [Theory]
    [InlineData(0)]
    [InlineData(1)]
    [InlineData(80)]
    [InlineData(double.NaN)]
    public void A_target_that_is_no_rate_is_refused(double rate)
    {
        var error = Assert.Throws<ArgumentOutOfRangeException>(() =>
            KeeperCurvePlot.Draw(Fit((60, 6, 6), (8, 6, 0)), new() { TargetRate = rate })
        );
        Assert.Contains("such as 0.8", error.Message, StringComparison.Ordinal);
    }

    private static string Title(double rate, params (double Denominator, int Frames, int Keepers)[] counts)
    {
        Drawn drawn = new(CurveScene.Of(Fit(counts), new() { TargetRate = rate, Answers = Quick }), 600, 400);
        return drawn.Scene.Title;
    }

    private static KeeperCurve Fit(params (double Denominator, int Frames, int Keepers)[] counts) => Fit(KeeperModel.Default, counts);

    private static KeeperCurve Fit(KeeperModel model, params (double Denominator, int Frames, int Keepers)[] counts)
    {
        FrameTable table = [.. counts.Select(c => new FrameCell(OneOver(c.Denominator), c.Frames, c.Keepers))];
        return model.Fit(table, cancellation: TestContext.Current.CancellationToken).Only;
    }
}
