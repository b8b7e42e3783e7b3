namespace Handhold.Tables.Tests;

public class HeaderTests
{
    [Theory]
    [InlineData("exposure,keeper,setup\n1/60,yes,a;b\tc\n", "a;b\tc")]
    [InlineData("exposure;keeper;setup\n1/60;yes;a,b\tc\n", "a,b\tc")]
    [InlineData("exposure\tkeeper\tsetup\n1/60\tyes\ta,b;c\n", "a,b;c")]
    [InlineData("exposure;keeper;setup;\"lamp, warm, left, low\"\n1/60;yes;a;b\n", "a")]
    [InlineData("\"exposure\";\"keeper\";\"setup\"\n\"1/60\";\"yes\";\"a\"\n", "a")]
    public void The_separator_is_the_one_that_fits_the_header(string text, string setup) =>
        Assert.Equal(setup, Text.Read(text)[0].Conditions.Setup);

    [Fact]
    public void Known_names_are_known_in_any_case_and_between_spaces()
    {
        var conditions = Text.Read(" Exposure , KEEPER, \"Setup\" \n1/60,yes,a\n")[0].Conditions;
        Assert.Equal(new Conditions { Setup = "a" }, conditions);
    }

    [Theory]
    [InlineData("photografer", "photographer")]
    [InlineData("stabilizer_stops", "stabiliser_stops")]
    [InlineData("focal_m", "focal_mm")]
    [InlineData("sesion", "session")]
    [InlineData("Sessions", "session")]
    [InlineData("brust", "burst")]
    [InlineData("corp", "crop")]
    [InlineData("exposre_s", "exposure_s")]
    [InlineData("keepres", "keepers")]
    [InlineData("frame", "frames")]
    public void A_name_close_to_a_known_one_is_refused_by_name(string written, string meant)
    {
        var error = Text.Error($"exposure,keeper,{written}\n1/60,yes,a\n");
        Assert.Equal((1, written, $"Did you mean {meant}?"), (error.Line, error.Column, error.Message));
        Assert.Contains("rename", error.Remedy, StringComparison.Ordinal);
    }

    [Fact]
    public void Second_verdicts_go_with_frames_and_their_counts_with_cells()
    {
        Assert.Equal(new SecondLooks(0, 1, 0), Text.Read("exposure,keeper,second_verdict\n1/60,yes,no\n")[0].SecondLooks);
        Assert.Equal(new SecondLooks(3, 0, 1), Text.Read("exposure,frames,keepers,kept_twice,kept_never\n1/60,6,4,3,1\n")[0].SecondLooks);
        Assert.Contains(
            "kept_twice",
            Text.Error("exposure,frames,keepers,second_verdict\n1/60,6,4,yes\n").Remedy,
            StringComparison.Ordinal
        );
        Assert.Contains("second_verdict", Text.Error("exposure,keeper,kept_once\n1/60,yes,1\n").Remedy, StringComparison.Ordinal);
        Assert.Contains("second verdict", Text.Error("exposure,keeper,second_verdict\n1/60,,no\n").Message, StringComparison.Ordinal);
        Assert.Contains(
            "cannot be kept twice",
            Text.Error("exposure,frames,keepers,kept_twice\n1/60,6,4,5\n").Message,
            StringComparison.Ordinal
        );
    }

    [Theory]
    [InlineData("group")]
    [InlineData("grip")]
    [InlineData("step")]
    [InlineData("first")]
    [InlineData("sex")]
    [InlineData("lens")]
    [InlineData("camera")]
    [InlineData("date")]
    [InlineData("period")]
    public void Another_name_is_kept_with_its_text(string name) =>
        Assert.Equal("a", Text.Read($"exposure,keeper,{name}\n1/60,yes,a\n")[0].Conditions.Others[name]);

    [Theory]
    [InlineData("frames,keepers", "no column of shutter speeds")]
    [InlineData("exposure,exposure_s,keeper", "two columns of shutter speeds")]
    [InlineData("exposure,frames", "frames and keepers is missing")]
    [InlineData("exposure,keepers", "frames and keepers is missing")]
    [InlineData("exposure,setup", "no column that says what was kept")]
    [InlineData("exposure,grade", "Grades alone")]
    [InlineData("exposure,frames,keepers,keeper", "mixes cells")]
    [InlineData("exposure,keeper,unjudged", "unjudged goes with")]
    [InlineData("exposure,keeper,setup,setup", "has the name of an earlier one")]
    [InlineData("exposure,keeper,lamp,Lamp", "has the name of an earlier one")]
    public void A_header_that_cannot_be_is_refused(string header, string said) =>
        Assert.Contains(said, Text.Error($"# comment\n{header}\n1,1,1\n") is { Line: 2 } e ? e.Message : "", StringComparison.Ordinal);

    [Theory]
    [InlineData("exposure,keeper", "no column grade")]
    [InlineData("exposure,frames,keepers,grade", "counted already")]
    public void A_threshold_without_grades_to_use_it_on_is_refused(string header, string said) =>
        Assert.Contains(said, Text.Error($"{header}\n1,1,1\n", new() { KeeperFromGrade = 2 }).Message, StringComparison.Ordinal);

    [Fact]
    public void All_that_is_wrong_with_a_header_is_said_at_once() =>
        Assert.Equal(3, Text.Errors("exposure,exposure_s,setup,setup\n1,1,1,1\n").Length);

    [Theory]
    [InlineData("")]
    [InlineData("\n\n")]
    [InlineData("# nothing\n")]
    [InlineData(",,\n")]
    [InlineData("\uFEFF")]
    public void A_file_without_a_header_is_refused(string text) =>
        Assert.Contains("no header row", Text.Error(text).Message, StringComparison.Ordinal);

    [Fact]
    public void A_header_without_rows_is_refused() =>
        Assert.Contains("no rows below", Text.Error("exposure,keeper\n# none yet\n,\n").Message, StringComparison.Ordinal);

    [Fact]
    public void A_column_without_a_name_must_be_empty()
    {
        Assert.Single(Text.Read("exposure,keeper,,\n1/60,yes,,\n"));
        Assert.Equal((2, "a"), Text.Error("exposure,keeper,,\n1/60,yes,a,\n") is var e ? (e.Line, e.Value) : default);
    }

    [Fact]
    public void A_threshold_below_one_is_refused() =>
        Assert.Throws<ArgumentOutOfRangeException>(() => Text.Read("exposure,grade\n1/60,1\n", new() { KeeperFromGrade = 0 }));
}
