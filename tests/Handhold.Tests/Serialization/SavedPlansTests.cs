using System.Text.Json;
using FsCheck.Xunit;
using static Handhold.ShutterSpeed;

namespace Handhold.Tests.Serialization;

public class SavedPlansTests
{
    private static readonly FramesNeededAnswer s_answer = SavedFits
        .QuickModel.Fit(SavedFits.QuickTable)
        .Only.FramesNeeded(OneOver(30), keepers: 2, assurance: 0.9, new() { BurstsOf = 3 });

    private static readonly string s_text = Text(s_answer);

    private static string Text(params FramesNeededAnswer[] answers)
    {
        using MemoryStream bytes = new();
        using (Utf8JsonWriter json = new(bytes, new() { Indented = true }))
        {
            json.WriteStartObject();
            json.WriteNumber("schemaVersion", 1);
            json.WriteStartArray("answers");
            foreach (var answer in answers)
                AnswerJson.Write(json, answer);
            json.WriteEndArray();
            json.WriteEndObject();
        }

        return System.Text.Encoding.UTF8.GetString(bytes.ToArray());
    }

    [Fact]
    public void A_plan_is_read_back_as_it_was_to_the_last_bit()
    {
        var (was, now) = (PlannedShoot.Of(s_answer, 3), Assert.Single(SavedPlans.Read(s_text, first: 3)));
        Assert.Equal(
            (was.Number, was.Key.ToString(), was.At, was.Keepers, was.Assurance, was.WantedAssurance),
            (now.Number, now.Key.ToString(), now.At, now.Keepers, now.Assurance, now.WantedAssurance)
        );
        Assert.Equal(was.Bursts, now.Bursts);
        Assert.Equal(was.Probabilities, now.Probabilities);
    }

    [Fact]
    public void Answers_that_found_no_number_of_frames_are_no_plans_but_keep_their_number()
    {
        var none = s_answer.Curve.FramesNeeded(OneOver(15), 5, 0.99, new() { Budget = 5 });
        Assert.Equal(2, Assert.Single(SavedPlans.Read(Text(none, s_answer))).Number);
    }

    [Theory]
    [InlineData("\"reachable\": true", "\"reachable\": 1", "answers[0].reachable")]
    [InlineData("\"frames\": ", "\"frames\": 1", "answers[0].frames")]
    [InlineData("\"keepers\": 2", "\"keepers\": 0", "answers[0].keepers")]
    [InlineData("\"at\": ", "\"at\": -", "answers[0].at")]
    [InlineData("\"assurance\": 0.", "\"assurance\": 7.", "answers[0].assurance")]
    [InlineData("\"probabilities\": [", "\"probabilities\": [ 0.5,", "answers[0].probabilities")]
    [InlineData("\"answers\"", "\"replies\"", "answers")]
    [InlineData("\"schemaVersion\": 1", "\"schemaVersion\": 9", "version 9")]
    public void What_contradicts_itself_is_refused_with_its_place(string was, string now, string place)
    {
        var at = s_text.IndexOf(was, StringComparison.Ordinal);
        var text = s_text[..at] + now + s_text[(at + was.Length)..];
        Assert.Contains(place, Assert.Throws<SavedPlansException>(() => SavedPlans.Read(text)).Message, StringComparison.Ordinal);
    }

    [Property(MaxTest = 2000, Replay = "(20261126,5)")]
    public void Any_damage_ends_in_plans_or_in_a_sentence(ushort place, byte length, string patch)
    {
        var from = place % s_text.Length;
        try
        {
            Assert.All(
                SavedPlans.Read(s_text[..from] + patch + s_text[Math.Min(s_text.Length, from + length % 9)..]),
                p => Assert.True(p.Frames >= p.Keepers)
            );
        }
        catch (SavedPlansException refused)
        {
            Assert.EndsWith(".", refused.Message, StringComparison.Ordinal);
        }
    }
}
