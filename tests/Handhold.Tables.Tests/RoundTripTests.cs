using System.Collections.Immutable;
using FsCheck;
using FsCheck.Fluent;
using FsCheck.Xunit;

namespace Handhold.Tables.Tests;

public class RoundTripTests
{
    [Property(Replay = "(20250131,7)", MaxTest = 1000, Arbitrary = [typeof(RoundTripTests)])]
    public void A_table_written_and_read_is_the_same_table(FrameTable table) => Assert.Equal(table, Text.Read(Text.Write(table)));

    [Property(Replay = "(20250131,9)", MaxTest = 300, Arbitrary = [typeof(RoundTripTests)])]
    public void What_is_read_again_is_written_the_same(FrameTable table)
    {
        var once = Text.Write(table);
        Assert.Equal(once, Text.Write(Text.Read(once)));
    }

    [Property(Replay = "(20250131,11)", MaxTest = 300, Arbitrary = [typeof(RoundTripTests)])]
    public void No_cell_of_a_written_table_begins_like_a_formula(FrameTable table)
    {
        // Read with every apostrophe kept: quote each cell open by the reader's own rules, then look at its first letter.
        var raw = Text.Write(table).Replace("'", "\u2019", StringComparison.Ordinal);
        var texts = Text.Read(raw).SelectMany(c => Texts(c.Conditions));
        Assert.DoesNotContain(texts, t => t[0] is '=' or '+' or '-' or '@' or '\t' or '\r');
    }

    [Property(Replay = "(20250131,13)", MaxTest = 1000)]
    public Property A_label_that_begins_with_another_letter_than_a_quote_mark_is_read_as_it_stands() =>
        Prop.ForAll(
            Gen.Elements("a", "\"", "\"\"", " ", "'", "=", "#", ";", "\t", "2\"")
                .NonEmptyListOf()
                .Select(parts => "x" + string.Concat(parts))
                .NonEmptyListOf()
                .ToArbitrary(),
            labels =>
                Assert.Equal(
                    labels.Select(l => l.TrimEnd(' ')),
                    Text.Read("exposure,setup,keeper\n" + string.Concat(labels.Select(l => $"1/60,{l},yes\n")))
                        .Select(c => c.Conditions.Setup)
                )
        );

    /// <summary>Tables whose labels hold what separated values and spreadsheets choke on, and whose numbers are any that are allowed.</summary>
    public static Arbitrary<FrameTable> Tables() => Gen.NonEmptyListOf(Cell).Select(cells => FrameTable.Create([.. cells])).ToArbitrary();

    private static Gen<string> Label { get; } =
        Gen.Elements(
                "a",
                "Å",
                "𝄞",
                "1/60",
                "yes",
                ",",
                ";",
                "\t",
                "\"",
                "\"\"",
                "'",
                "=",
                "+",
                "-",
                "@",
                "#",
                " ",
                "\u00a0",
                "\n",
                "\r",
                "\r\n",
                "\uFEFF"
            )
            .NonEmptyListOf()
            .Select(parts => string.Concat(parts.Take(6)))
            .Where(text =>
                !string.IsNullOrWhiteSpace(text) && text.Replace("\r\n", "\n", StringComparison.Ordinal).Count(c => c is '\r' or '\n') < 3
            );

    private static Gen<double> Positive { get; } =
        ArbMap.Default.GeneratorFor<double>().Select(Math.Abs).Where(x => x > 0 && double.IsFinite(x));

    private static Gen<double> Any { get; } = ArbMap.Default.GeneratorFor<double>().Where(double.IsFinite);

    private static Gen<ShutterSpeed> Speed { get; } =
        Gen.OneOf(Positive.Select(ShutterSpeed.FromSeconds), Gen.Elements(MarkedSpeeds.Series(Marks.Third).ToArray()));

    private static Gen<Conditions> Recorded { get; } =
        from photographer in Maybe(Label)
        from setup in Maybe(Label)
        from criterion in Maybe(Label)
        from session in Maybe(Label)
        from motion in Maybe(Label)
        from order in Perhaps(Any)
        from focal in Perhaps(Positive)
        from stops in Perhaps(Positive)
        from place in Gen.Choose(0, 9)
        from names in Gen.SubListOf("lamp", "=SUM(A1)", "-", "floor, room", "say \"when\"", "#", "grade", "two\nlines")
        from texts in Label.ListOf(names.Count)
        select new Conditions
        {
            Photographer = photographer,
            Setup = setup,
            Criterion = criterion is null ? null : new(criterion),
            Session = session,
            SubjectMotion = motion,
            Order = order,
            FocalLength = focal,
            StabiliserStops = stops,
            BurstPosition = place == 0 ? null : place,
            Others = names.Zip(texts).ToImmutableSortedDictionary(p => p.First, p => p.Second, StringComparer.Ordinal),
        };

    private static Gen<FrameCell> Cell { get; } =
        from speed in Speed
        from keepers in Gen.Choose(0, 5)
        from rejects in Gen.Choose(0, 5)
        from unjudged in Gen.Choose(keepers + rejects > 0 ? 0 : 1, 3)
        from twice in Gen.Choose(0, keepers)
        from never in Gen.Choose(0, rejects)
        from once in Gen.Choose(0, keepers + rejects - twice - never)
        from conditions in Recorded
        select new FrameCell(speed, keepers + rejects, keepers)
        {
            Unjudged = unjudged,
            SecondLooks = new(twice, once, never),
            Conditions = conditions,
        };

    private static Gen<string?> Maybe(Gen<string> text) =>
        Gen.Frequency((1, Gen.Constant<string?>(null)), (2, text.Select(t => (string?)t)));

    private static Gen<double?> Perhaps(Gen<double> number) =>
        Gen.Frequency((1, Gen.Constant<double?>(null)), (2, number.Select(x => (double?)x)));

    private static IEnumerable<string> Texts(Conditions conditions) =>
        ((string?[])[conditions.Photographer, conditions.Setup, conditions.Criterion?.Name, conditions.Session, conditions.SubjectMotion])
            .OfType<string>()
            .Concat(conditions.Others.Values)
            .Concat(conditions.Others.Keys);
}
