namespace Handhold.Photos.Tests;

public class VerdictFacts
{
    private static readonly PhotoOptions s_rated = PhotoOptions.Default with { KeeperFromRating = 3 };

    private static readonly PhotoOptions s_labelled = PhotoOptions.Default with { KeeperFromLabel = "Green", RejectFromLabel = "Red" };

    [Theory]
    [InlineData("-1", Verdict.Reject)]
    [InlineData("0", Verdict.NotJudged)]
    [InlineData("1", Verdict.Reject)]
    [InlineData("2.5", Verdict.Reject)]
    [InlineData("3", Verdict.Keeper)]
    [InlineData("5", Verdict.Keeper)]
    public void Ratings_judge_by_the_mapping_and_an_unrated_frame_is_not_judged(string rating, Verdict verdict)
    {
        Assert.Equal(verdict, Judged(s_rated, Shelf.Packet($"xmp:Rating=\"{rating}\"")));
        Assert.Equal(verdict, Judged(s_rated, Shelf.Packet("", $"<xmp:Rating>{rating}</xmp:Rating>")));
        Assert.Equal(verdict, Judged(s_rated, null, Shelf.Packet($"xmp:Rating=\"{rating}\"")));
    }

    [Fact]
    public void An_absent_rating_is_not_judged() => Assert.Equal(Verdict.NotJudged, Judged(s_rated, Shelf.Packet("")));

    [Fact]
    public void Without_a_mapping_nothing_is_judged() =>
        Assert.Equal(Verdict.NotJudged, Judged(PhotoOptions.Default, Shelf.Packet("xmp:Rating=\"5\" xmp:Label=\"Green\"")));

    [Theory]
    [InlineData("Green", Verdict.Keeper)]
    [InlineData("Red", Verdict.Reject)]
    [InlineData("green", Verdict.NotJudged)]
    [InlineData("Blue", Verdict.NotJudged)]
    public void Labels_judge_by_the_mapping_letter_by_letter(string label, Verdict verdict) =>
        Assert.Equal(verdict, Judged(s_labelled, Shelf.Packet($"xmp:Label=\"{label}\"")));

    [Fact]
    public void A_label_does_not_judge_by_rating_nor_a_rating_by_label()
    {
        Assert.Equal(Verdict.NotJudged, Judged(s_rated, Shelf.Packet("xmp:Label=\"Green\"")));
        Assert.Equal(Verdict.NotJudged, Judged(s_labelled, Shelf.Packet("xmp:Rating=\"-1\"")));
    }

    [Fact]
    public void Rating_and_label_that_say_opposite_things_leave_the_frame_unjudged()
    {
        using var shelf = new Shelf().Put("a.jpg", Shelf.Plain(), Shelf.Packet("xmp:Rating=\"-1\" xmp:Label=\"Green\""));
        var read = shelf.Read(s_labelled with { KeeperFromRating = 1 });
        Assert.Equal(Verdict.NotJudged, read.Photos[0].Frame.Verdict);
        Assert.Equal(PhotoReason.VerdictsDiffer, Assert.Single(read.Remarks).Reason);
    }

    [Theory]
    [InlineData(MetadataPrecedence.Sidecar, Verdict.Reject)]
    [InlineData(MetadataPrecedence.Photograph, Verdict.Keeper)]
    public void Where_photograph_and_sidecar_differ_precedence_decides_and_it_is_said(MetadataPrecedence precedence, Verdict verdict)
    {
        using var shelf = new Shelf()
            .Put("a.jpg", Shelf.Plain(), Shelf.Packet("xmp:Rating=\"5\""))
            .Put("a.xmp", Shelf.Packet("xmp:Rating=\"1\""));
        var read = shelf.Read(s_rated with { Precedence = precedence });
        Assert.Equal(verdict, read.Photos[0].Frame.Verdict);
        Assert.Equal(PhotoReason.RatingsDiffer, Assert.Single(read.Remarks).Reason);
    }

    [Fact]
    public void A_sidecar_that_says_unrated_unrates()
    {
        Assert.Equal(Verdict.NotJudged, Judged(s_rated, Shelf.Packet("xmp:Rating=\"5\""), Shelf.Packet("xmp:Rating=\"0\"")));
        Assert.Equal(Verdict.Keeper, Judged(s_rated, Shelf.Packet("xmp:Rating=\"5\""), Shelf.Packet("")));
    }

    [Theory]
    [InlineData("a.jpg.xmp")]
    [InlineData("a.XMP")]
    [InlineData("A.xmp")]
    public void A_sidecar_is_found_by_either_of_its_names(string name)
    {
        using var shelf = new Shelf().Put("a.jpg", Shelf.Plain()).Put(name, Shelf.Packet("xmp:Rating=\"4\""));
        Assert.Equal(Verdict.Keeper, shelf.Only(s_rated).Verdict);
    }

    [Theory]
    [InlineData("a.jpg.xmp")]
    [InlineData("a.XMP")]
    public void A_photograph_named_by_itself_has_its_sidecar_too(string name)
    {
        using var shelf = new Shelf().Put("a.jpg", Shelf.Plain()).Put(name, Shelf.Packet("xmp:Rating=\"4\""));
        var read = Photographs.Read([shelf["a.jpg"]], s_rated, cancellation: TestContext.Current.CancellationToken);
        Assert.Equal((Verdict.Keeper, 0), (Assert.Single(read.Photos).Frame.Verdict, read.Skipped.Length));
    }

    [Theory]
    [InlineData("6")]
    [InlineData("-2")]
    [InlineData("NaN")]
    [InlineData("five")]
    public void A_rating_that_does_not_exist_is_said_and_judges_nothing(string rating)
    {
        using var shelf = new Shelf().Put("a.jpg", Shelf.Plain(), Shelf.Packet($"xmp:Rating=\"{rating}\""));
        Assert.Equal(Verdict.NotJudged, shelf.Only(s_rated).Verdict);
        Assert.Equal(PhotoReason.RatingUnread, Assert.Single(shelf.Read(s_rated).Remarks).Reason);
    }

    [Theory]
    [InlineData("")]
    [InlineData("no XML")]
    [InlineData("<a><b></a>")]
    [InlineData("<!DOCTYPE x [<!ENTITY a \"1\">]><x>&a;</x>")]
    public void A_sidecar_that_is_none_leaves_the_photographs_own_rating(string text)
    {
        using var shelf = new Shelf().Put("a.jpg", Shelf.Plain(), Shelf.Packet("xmp:Rating=\"4\"")).Put("a.jpg.xmp", text + " ");
        Assert.Equal(Verdict.Keeper, shelf.Only(s_rated).Verdict);
        Assert.Equal(PhotoReason.SidecarUnread, Assert.Single(shelf.Read(s_rated).Remarks).Reason);
    }

    [Fact]
    public void A_threshold_outside_one_to_five_is_refused() =>
        Assert.Throws<ArgumentOutOfRangeException>(() => PhotoOptions.Default with { KeeperFromRating = 0 });

    private static Verdict Judged(PhotoOptions options, string? inside, string? beside = null)
    {
        using var shelf = new Shelf().Put("a.jpg", Shelf.Plain(), inside);
        if (beside is not null)
            shelf.Put("a.xmp", beside);
        return shelf.Only(options).Verdict;
    }
}
