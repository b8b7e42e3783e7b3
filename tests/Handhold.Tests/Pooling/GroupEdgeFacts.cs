using Handhold.Tests.Estimators;

namespace Handhold.Tests.Pooling;

public class GroupEdgeFacts
{
    private static readonly (int Denominator, int Keepers)[] s_falling = [(60, 9), (30, 7), (15, 4), (8, 1)];

    private static KeeperModel Varying(VaryingPart part = VaryingPart.Intercept) =>
        PublishedTables.Likelihood with
        {
            Varies = [new("photographer", part)],
        };

    private static FrameTable Alike(params string[] photographers) => [.. photographers.SelectMany(p => Falling(p, 0))];

    private static IEnumerable<FrameCell> Falling(string photographer, int more) =>
        s_falling.Select(f => new FrameCell(ShutterSpeed.OneOver(f.Denominator), 10, Math.Clamp(f.Keepers + more, 0, 10))
        {
            Conditions = new() { Photographer = photographer },
        });

    [Theory]
    [InlineData(VaryingPart.Intercept, 1)]
    [InlineData(VaryingPart.Exposure, 1)]
    [InlineData(VaryingPart.Both, 2)]
    [InlineData(VaryingPart.BothUncorrelated, 2)]
    public void Levels_that_are_alike_have_no_spread_and_the_estimates_of_one_curve(VaryingPart part, int spreads)
    {
        var curve = Varying(part).Fit(Alike("a", "b", "c", "d")).Only;
        var (fit, plain) = (curve.Linear!, (PublishedTables.Likelihood with { Each = [] }).Fit(Alike("a", "b", "c", "d")).Only.Linear!);
        var group = Assert.Single(fit.Groups);
        Assert.Equal(spreads, group.Spreads.Length);
        Assert.All(group.Spreads, s => Assert.Equal((0, null), (s.Estimate, s.StandardError)));
        Assert.All(group.Spreads, s => Assert.True(s.Interval is { Lower: 0, Upper: > 0.1 and < 5 }));
        Assert.All(group.Levels, level => Assert.Equal(1, level.Borrowed));
        Assert.Equal(plain.LogLikelihood, fit.LogLikelihood, 1e-9);
        foreach (var (one, other) in plain.Coefficients.Zip(fit.Coefficients))
        {
            Assert.Equal(one.Estimate!.Value, other.Estimate!.Value, 1e-6);
            Assert.Equal(one.StandardError!.Value, other.StandardError!.Value, 1e-4);
        }

        Assert.Contains(curve.Statuses, s => s.Code == StatusCode.NoGroupSpread);
    }

    [Fact]
    public void One_photographer_has_no_spread()
    {
        var curve = Varying().Fit(Alike("a")).Only;
        Assert.Equal(0, curve.Linear!.Groups.Single().Spreads.Single().Estimate);
        Assert.Contains(
            curve.Statuses,
            s => s.Code == StatusCode.NoGroupSpread && s.Message.Contains("one photographer only", StringComparison.Ordinal)
        );
    }

    [Theory]
    [InlineData(VaryingPart.Intercept)]
    [InlineData(VaryingPart.Both)]
    [InlineData(VaryingPart.BothUncorrelated)]
    public void Two_photographers_are_fitted(VaryingPart part)
    {
        var fit = Varying(part).Fit([.. Falling("a", -1), .. Falling("b", 2)]).Only.Linear!;
        var group = fit.Groups.Single();
        Assert.Contains(group.Spreads, s => s.Estimate > 0 && s.Interval.Lower < s.Estimate && s.Interval.Upper > s.Estimate);
        Assert.True(group.Levels[0].HalfKeeperExposure!.Value.Seconds < group.Levels[1].HalfKeeperExposure!.Value.Seconds);
        Assert.All(fit.Coefficients, c => Assert.True(c.StandardError > 0));
    }

    [Fact]
    public void A_row_of_several_frames_is_a_level_too_and_a_level_of_one_frame_is_refused()
    {
        FrameTable rows =
        [
            .. Falling("a", 1).Concat(Falling("a", -2)).Select((cell, i) => cell with { Conditions = new() { Photographer = $"p{i}" } }),
        ];
        Assert.True(Varying().Fit(rows).Only.Linear!.Groups.Single().Spreads.Single().Estimate >= 0);
        FrameTable frames =
        [
            .. rows.Select(cell => new FrameCell(cell.Exposure, 1, cell.Keepers is > 5 or 2 ? 1 : 0) { Conditions = cell.Conditions }),
        ];
        Assert.Contains("one frame", Assert.Throws<CellException>(() => Varying().Fit(frames)).Message, StringComparison.Ordinal);
    }

    [Fact]
    public void Levels_that_keep_or_lose_everything_are_refused_with_a_reason()
    {
        FrameTable table =
        [
            .. new[] { 60, 60, 60, 30, 30, 30, 15, 15, 15 }.Select(
                (denominator, i) =>
                    new FrameCell(ShutterSpeed.OneOver(denominator), 5, i is 0 or 1 or 2 or 4 or 8 ? 5 : 0)
                    {
                        Conditions = new() { Photographer = $"p{i}" },
                    }
            ),
        ];
        Assert.Contains("kept or lost all", Assert.Throws<CellException>(() => Varying().Fit(table)).Message, StringComparison.Ordinal);
    }

    [Fact]
    public void Where_keepers_and_rejects_separate_it_is_said_that_levels_cannot_be_told()
    {
        FrameTable table =
        [
            .. new[] { "a", "b" }.SelectMany(p =>
                s_falling.Select(
                    (f, i) =>
                        new FrameCell(ShutterSpeed.OneOver(f.Denominator), 5, i < 2 ? 5 : 0) { Conditions = new() { Photographer = p } }
                )
            ),
        ];
        var curve = Varying().Fit(table).Only;
        Assert.Empty(curve.Linear!.Groups);
        Assert.Contains(curve.Statuses, s => s.Code == StatusCode.GroupsNotAssessable);
        Assert.Contains(curve.Statuses, s => s.Code == StatusCode.Separated);
    }

    [Fact]
    public void Labels_that_repeat_are_the_same_level_unless_they_lie_within_another()
    {
        FrameTable table =
        [
            .. from photographer in new[] { "a", "b", "c" }
            from setup in new[] { "tele", "wide" }
            from cell in Falling(photographer, setup == "tele" ? -1 : photographer[0] - 'a')
            select cell with
            {
                Conditions = cell.Conditions with { Setup = setup },
            },
        ];
        var model = PublishedTables.Likelihood with { Varies = [new("photographer"), new("setup")] };
        var crossed = model.Fit(table).Only;
        Assert.Equal(2, crossed.Linear!.Groups[1].Levels.Length);
        Assert.Contains(
            crossed.Statuses,
            s => s.Code == StatusCode.LabelsRepeat && s.Message.Contains("--within setup=photographer", StringComparison.Ordinal)
        );
        var nested = (model with { Varies = [new("photographer"), Groups.Nested] }).Fit(table).Only;
        Assert.Equal(6, nested.Linear!.Groups[1].Levels.Length);
        Assert.Equal(("a", "tele"), (nested.Linear!.Groups[1].Levels[0].Parent, nested.Linear!.Groups[1].Levels[0].Label));
        Assert.DoesNotContain(nested.Statuses, s => s.Code == StatusCode.LabelsRepeat);
    }

    [Fact]
    public void Photographers_of_one_setup_each_are_not_told_apart_from_their_setups()
    {
        FrameTable table = [.. Groups.Table.Where(cell => cell.Conditions.Setup == "s1")];
        var refused = Assert.Throws<CellException>(() => Groups.Model("nested").Fit(table));
        Assert.Contains("what varies by which cannot be told", refused.Message, StringComparison.Ordinal);
        Assert.NotEmpty(Groups.Model("slope").Fit(table).Only.Linear!.Groups);
    }

    [Fact]
    public void A_saved_fit_comes_back_with_its_levels()
    {
        var fit = Groups.Model("nestedBoth").Fit([.. Groups.Table.Take(96)]);
        var text = SavedFit.Write(fit);
        Assert.Equal(text, SavedFit.Write(SavedFit.Read(text)));
        Assert.Contains("\"within\": \"photographer\"", text, StringComparison.Ordinal);
    }

    [Fact]
    public void Pooling_and_the_order_of_rows_change_no_estimate()
    {
        var table = Groups.Table;
        FrameTable split =
        [
            .. table
                .Reverse()
                .SelectMany(cell => new[] { Part(cell, cell.Keepers, cell.Keepers), Part(cell, cell.Frames - cell.Keepers, 0) })
                .OfType<FrameCell>(),
        ];
        var (fit, again) = (Groups.Fit("nestedBoth"), Groups.Model("nestedBoth").Fit(split).Only.Linear!);
        Assert.Equal(fit.LogLikelihood, again.LogLikelihood, 1e-8);
        foreach (var (one, other) in fit.Coefficients.Zip(again.Coefficients))
            Assert.Equal(one.Estimate!.Value, other.Estimate!.Value, 1e-6);

        static FrameCell? Part(FrameCell cell, int frames, int keepers) =>
            frames == 0 ? null : new(cell.Exposure, frames, keepers) { Conditions = cell.Conditions };
    }
}
