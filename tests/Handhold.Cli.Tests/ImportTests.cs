namespace Handhold.Cli.Tests;

public class ImportTests
{
    private static readonly string[] s_rated = ["--keeper-from-rating", "3"];

    [Fact]
    public void Photographs_become_a_table_that_can_be_fitted()
    {
        using Folder folder = new();
        using var shots = Shoot();
        var made = Tool.Run(["import", shots[""], .. s_rated, "--out", folder["frames.csv"]]);
        Assert.Equal((0, ""), (made.Code, made.Error));
        Assert.Contains("Took 24 photographs", made.Output, StringComparison.Ordinal);
        Assert.Contains("2 not judged", made.Output, StringComparison.Ordinal);
        Assert.Equal(0, Tool.Run("rate", folder["frames.csv"], "--at", "1/30").Code);
    }

    [Fact]
    public void Photographs_fitted_straight_give_the_fit_of_their_table()
    {
        using Folder folder = new();
        using var shots = Shoot();
        Assert.Equal(0, Tool.Run(["import", shots[""], .. s_rated, "--out", folder["frames.csv"]]).Code);
        var straight = Tool.Run(["fit", shots[""], .. s_rated, .. Fitted.Quick, "--json"]);
        Assert.Equal(0, straight.Code);
        Assert.Contains("Took 24 photographs", straight.Error, StringComparison.Ordinal);
        Assert.Equal(Tool.Run(["fit", folder["frames.csv"], .. Fitted.Quick, "--json"]).Output, straight.Output);
    }

    [Fact]
    public void Without_a_file_the_table_and_nothing_else_goes_to_standard_output()
    {
        using var shots = Shoot();
        var made = Tool.Run(["import", shots[""], .. s_rated]);
        Assert.StartsWith("exposure,keeper,", made.Output, StringComparison.Ordinal);
        Assert.Equal(25, made.Output.Split('\n').Length - 1);
        Assert.Contains("Took 24 photographs", made.Error, StringComparison.Ordinal);
        Assert.Equal(0, Tool.RunWith(made.Output, ["fit", "-", .. Fitted.Quick]).Code);
    }

    [Fact]
    public void Unrated_frames_are_not_judged_and_without_a_mapping_none_is()
    {
        using var shots = Shoot();
        var made = Tool.Run("import", shots[""]);
        Assert.Contains("24 not judged", made.Error, StringComparison.Ordinal);
        Assert.Contains("--keeper-from-rating", made.Error, StringComparison.Ordinal);
    }

    [Fact]
    public void What_was_skipped_is_said_a_line_a_reason_with_count_and_example()
    {
        using var shots = Shoot();
        shots.Write("notes.txt", "a");
        shots.Write("more.txt", "b");
        shots.Write("broken.jpg", "c");
        var made = Tool.Run(["import", shots[""], .. s_rated]);
        Assert.Single(made.Error.Split('\n'), line => line.StartsWith("Skipped 2 files, such as", StringComparison.Ordinal));
        Assert.Single(made.Error.Split('\n'), line => line.StartsWith("Skipped 1 file, ", StringComparison.Ordinal));
    }

    [Fact]
    public void The_report_for_programs_counts_frames_and_reasons()
    {
        using Folder folder = new();
        using var shots = Shoot();
        shots.Write("notes.txt", "a");
        var made = Tool.Run(["import", shots[""], .. s_rated, "--out", folder["frames.csv"], "--json"]);
        Assert.Equal(
            ["schemaVersion", "files", "photographs", "frames", "keepers", "unjudged", "missing", "skipped", "remarks"],
            made.Json.Names()
        );
        Assert.Equal((24, 22, 2), (made.Json.Number("photographs"), made.Json.Number("frames"), made.Json.Number("unjudged")));
        var skipped = Assert.Single(made.Json.List("skipped"));
        Assert.Equal(("otherFile", 1), (skipped.Text("code"), skipped.Number("count")));
    }

    [Fact]
    public void Notes_are_joined_by_folder_time_setup_and_file_later_lines_over_earlier_ones()
    {
        using Folder folder = new();
        using Folder shots = new();
        Snapshot.Put(shots, "monday/1.jpg", 60, "12:00:00", 3);
        Snapshot.Put(shots, "monday/2.jpg", 30, "13:00:00", 3);
        Snapshot.Put(shots, "tuesday/3.jpg", 15, "14:00:00", 3);
        var notes = folder.Write(
            "notes.csv",
            "folder,photo,setup,from,until,stabiliser_mode,setup_name\n,,Clock One,,,off,plain\nmonday,,,2026-11-20 12:30,2026-11-20,body,\n,3.jpg,,,,lens,\nnowhere,,,,,both,\n"
        );
        var made = Tool.Run([
            "import",
            shots[""],
            .. s_rated,
            "--notes",
            notes,
            "--note",
            "criterion=print",
            "--out",
            folder["frames.csv"],
        ]);
        Assert.Equal((0, ""), (made.Code, made.Error));
        Assert.Contains("line 5 of", made.Output, StringComparison.Ordinal);
        var rows = File.ReadAllLines(folder["frames.csv"]);
        Assert.Equal(
            ["off", "body", "lens"],
            rows.Skip(1).Select(row => row.Split(',')[Array.IndexOf(rows[0].Split(','), "stabiliser_mode")])
        );
        Assert.All(rows.Skip(1), row => Assert.Contains(",plain,print,", row, StringComparison.Ordinal));
    }

    [Fact]
    public void Deleted_frames_make_answers_rest_on_what_is_missing()
    {
        using Folder folder = new();
        using var shots = Shoot();
        foreach (var number in new[] { 8, 11, 14, 17 })
            File.Delete(shots[$"IMG_{number:0000}.jpg"]);
        var made = Tool.Run(["import", shots[""], .. s_rated, "--out", folder["frames.csv"]]);
        Assert.Contains("4 more missing", made.Output, StringComparison.Ordinal);
        var frames = Tool.Run([
            "frames",
            folder["frames.csv"],
            .. Fitted.Quick,
            "--at",
            "1/30",
            "--keepers",
            "1",
            "--assurance",
            "90%",
            "--json",
        ]);
        Assert.Contains("restsOnMissing", frames.Output, StringComparison.Ordinal);
        var fit = Tool.Run(["fit", folder["frames.csv"], .. Fitted.Quick]);
        Assert.Contains("4 frames not judged are missing from the count of files", fit.Output, StringComparison.Ordinal);
    }

    [Fact]
    public void Where_no_photograph_gives_a_frame_nothing_is_written()
    {
        using Folder folder = new();
        using Folder shots = new();
        shots.Write("a.jpg", "no photograph at all");
        folder.Write("frames.csv", "kept");
        var refused = Tool.Run("import", shots[""], "--out", folder["frames.csv"], "--json");
        Assert.Equal((3, "noFrames"), (refused.Code, Assert.Single(refused.Json.List("errors")).Text("code")));
        Assert.Equal("kept", File.ReadAllText(folder["frames.csv"]));
        Assert.Single(folder.Files);
    }

    [Fact]
    public void A_cancelled_import_ends_with_130_and_writes_nothing()
    {
        using Folder folder = new();
        using var shots = Shoot();
        using StringWriter output = new();
        Desk desk = new(TextReader.Null, output, output, new CancellationToken(canceled: true));
        Assert.Equal(130, CommandLine.Run(["import", shots[""], "--out", folder["frames.csv"]], desk));
        Assert.Empty(folder.Files);
    }

    [Theory]
    [InlineData(2, "PHOTOS is missing", "import")]
    [InlineData(3, "There is no file or folder", "import", "/no/such/folder")]
    [InlineData(2, "1 to 5", "import", ".", "--keeper-from-rating", "0")]
    [InlineData(2, "1 to 5", "import", ".", "--keeper-from-rating", "6")]
    [InlineData(2, "with its unit", "import", ".", "--burst-gap", "2")]
    [InlineData(2, "with its unit", "import", ".", "--session-gap", "-2h")]
    [InlineData(2, "sidecar or photograph", "import", ".", "--prefer", "me")]
    [InlineData(2, "leaves no keepers", "import", ".", "--reject-from-label", "Red")]
    [InlineData(2, "as well", "import", ".", "--keeper-from-label", "Red", "--reject-from-label", "Red")]
    [InlineData(2, "no name before", "import", ".", "--note", "lens")]
    [InlineData(2, "no number", "import", ".", "--note", "magnification=big")]
    [InlineData(2, "say themselves", "import", ".", "--note", "photo=a")]
    [InlineData(3, "There is no file", "import", ".", "--notes", "/no/such/notes.csv")]
    [InlineData(2, "ends in .csv", "import", ".", "--out", "a.jpg")]
    [InlineData(2, "--out", "import", ".", "--json")]
    [InlineData(2, "are keepers", "fit", ".")]
    [InlineData(2, "is no folder", "fit", "-", "--keeper-from-rating", "1")]
    [InlineData(3, "is a folder", "rate", ".", "--at", "1/30")]
    public void What_cannot_be_followed_is_said_with_the_way_out(int code, string said, params string[] arguments)
    {
        var tool = Tool.RunWith(Tables.Plain, arguments);
        Assert.Equal(code, tool.Code);
        Assert.Contains(said, tool.Error + tool.Output, StringComparison.Ordinal);
    }

    private static Folder Shoot()
    {
        Folder shots = new();
        Snapshot.PutShoot(shots);
        return shots;
    }
}
