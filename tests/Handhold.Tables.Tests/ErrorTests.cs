namespace Handhold.Tables.Tests;

public class ErrorTests
{
    [Theory]
    [InlineData("6,7", "keepers", "7", "7 keepers in 6 frames")]
    [InlineData("6,", "keepers", "", "missing")]
    [InlineData(",3", "frames", "", "missing")]
    [InlineData("6,2.5", "keepers", "2.5", "not a whole number")]
    [InlineData("6.0,3", "frames", "6.0", "not a whole number")]
    [InlineData("6,-1", "keepers", "-1", "below 0")]
    [InlineData("-6,0", "frames", "-6", "below 0")]
    [InlineData("0,0", "frames", "0", "no frames")]
    [InlineData("6,NaN", "keepers", "NaN", "not a whole number")]
    [InlineData("6,\u0663", "keepers", "\u0663", "not a whole number")]
    [InlineData("99999999999,1", "frames", "99999999999", "not a whole number")]
    [InlineData("6,half", "keepers", "half", "not a whole number")]
    public void Counts_that_cannot_be_are_refused(string counts, string column, string value, string said)
    {
        var error = Text.Error($"exposure,frames,keepers\n1/30,6,6\n1/60,{counts}\n");
        Assert.Equal((3, column, value), (error.Line, error.Column, error.Value));
        Assert.Contains(said, error.Message, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("2")]
    [InlineData("ja")]
    [InlineData("NA")]
    [InlineData("1.0")]
    public void A_verdict_is_yes_no_or_nothing(string keeper)
    {
        var error = Text.Error($"exposure,keeper\n1/60,1\n1/60,{keeper}\n");
        Assert.Equal((3, "keeper", keeper), (error.Line, error.Column, error.Value));
    }

    [Theory]
    [InlineData("focal_mm", "0")]
    [InlineData("focal_mm", "-35")]
    [InlineData("focal_mm", "NaN")]
    [InlineData("focal_mm", "Infinity")]
    [InlineData("focal_mm", "NA")]
    [InlineData("focal_mm", "35 mm")]
    [InlineData("stabiliser_stops", "-1")]
    [InlineData("magnification", "1:2")]
    [InlineData("burst_position", "0")]
    [InlineData("burst_position", "1.5")]
    [InlineData("subject_speed_mm_s", "1e999")]
    [InlineData("order", "first")]
    public void A_condition_that_cannot_be_is_refused(string column, string value)
    {
        var error = Text.Error($"exposure,keeper,{column}\n1/60,yes,\n1/60,yes,{value}\n");
        Assert.Equal((3, column, value), (error.Line, error.Column, error.Value));
        Assert.NotEmpty(error.Remedy);
    }

    [Fact]
    public void Conditions_that_contradict_each_other_are_refused_at_their_line()
    {
        var error = Text.Error("exposure,keeper,focal_mm,subject_distance_m\n1/60,yes,200,2\n1/60,yes,200,0.2\n");
        Assert.Equal((3, null), (error.Line, error.Column));
    }

    [Theory]
    [InlineData("-1", null)]
    [InlineData("good", null)]
    [InlineData("3", 4)]
    public void A_grade_that_cannot_be_is_refused(string grade, int? threshold)
    {
        var error = Text.Error($"exposure,keeper,grade\n1/60,yes,{grade}\n", new() { KeeperFromGrade = threshold });
        Assert.Equal((2, "grade", grade), (error.Line, error.Column, error.Value));
    }

    [Theory]
    [InlineData("1/60,yes")]
    [InlineData("1/60,yes,a,b")]
    [InlineData("1/60")]
    public void A_row_with_more_or_fewer_cells_than_the_header_is_refused(string row)
    {
        var error = Text.Error($"exposure,keeper,setup\n{row}\n1/60,no,a\n");
        Assert.Equal(2, error.Line);
        Assert.Contains("where the header has 3 columns", error.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void Twenty_errors_are_told_at_once_and_no_more()
    {
        var errors = Text.Errors("exposure,keeper\n" + string.Concat(Enumerable.Repeat("1/60,maybe\n", 50)));
        Assert.Equal(Enumerable.Range(2, 20), errors.Select(e => e.Line));
    }

    [Fact]
    public void Every_error_of_a_row_is_told() =>
        Assert.Equal(
            new HashSet<string?> { "exposure", "keeper", "focal_mm" },
            Text.Errors("exposure,keeper,focal_mm\n1/0,maybe,x\n").Select(e => e.Column).ToHashSet()
        );

    [Fact]
    public void The_message_lists_file_line_column_value_problem_and_remedy()
    {
        var exception = Assert.Throws<TableException>(() => Text.Read("exposure,keeper\n1/60,maybe\n1/30,\"of\ncourse\"\n"));
        Assert.StartsWith(
            "museum.csv, line 2, column keeper, value 'maybe': This is no verdict. Write yes or no",
            exception.Message,
            StringComparison.Ordinal
        );
        Assert.Equal(2, exception.Message.Split('\n').Length);
        Assert.Contains("line 3, column keeper, value 'of\\ncourse'", exception.Message, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("\u001b[31mred", "\\u001b[31mred")]
    [InlineData("\u202egnp.exe", "\\u202egnp.exe")]
    [InlineData("0123456789012345678901234567890123456789", "0123456789012345678901234567890123456789")]
    [InlineData("0123456789012345678901234567890123456789x", "012345678901234567890123456789012345678…")]
    public void A_value_is_shown_escaped_and_shortened(string value, string shown) =>
        Assert.Equal(shown, Text.Error($"exposure,keeper\n1/60,{value}\n").Value);

    [Fact]
    public void Reading_stops_when_asked()
    {
        using var stop = new CancellationTokenSource();
        stop.Cancel();
        using var text = new StringReader("exposure,keeper\n1/60,yes\n");
        Assert.Throws<OperationCanceledException>(() => TableReader.Read(text, "museum.csv", cancellation: stop.Token));
    }

    [Fact]
    public void Progress_tells_the_rows_read()
    {
        var told = new Told();
        using var text = new StringReader("exposure,keeper\n" + string.Concat(Enumerable.Repeat("1/60,yes\n", 2500)));
        TableReader.Read(text, "museum.csv", progress: told, cancellation: TestContext.Current.CancellationToken);
        Assert.Equal([1000, 2000], told.Rows);
    }

    private sealed class Told : IProgress<int>
    {
        public List<int> Rows { get; } = [];

        public void Report(int value) => Rows.Add(value);
    }
}
