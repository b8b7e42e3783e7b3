using System.Globalization;
using System.Text;
using Handhold.Randomness;

namespace Handhold.Photos.Tests;

/// <summary>Damaged photographs and sidecars: a few thousand here, as many as <c>eng/mutants.sh</c> is told there.</summary>
public class MutantFacts
{
    private const int Few = 4000;
    private const int LongestMs = 1000;
    private const long MostAllocated = 32 << 20;

    private static readonly PhotoOptions s_options = PhotoOptions.Default with { KeeperFromRating = 1 };

    private static int Count =>
        int.TryParse(Environment.GetEnvironmentVariable("HANDHOLD_MUTANTS"), NumberStyles.None, CultureInfo.InvariantCulture, out var many)
            ? many
            : Few;

    [Fact]
    public void No_damage_makes_a_photograph_throw_hang_or_fill_the_memory()
    {
        byte[][] corpus = [.. FormatFacts.Corpus, .. GoldenFacts.Corpus];
        Damage(
            corpus,
            (bytes, shelf) =>
            {
                shelf.Put("a.jpg", bytes);
                PhotoEntry entry = new(shelf["a.jpg"], "a.jpg", null);
                var reading = new PhotoFile(s_options).Read(entry);
                Assert.Equal(reading.Photo is null, reading.Refused is not null);
                if (bytes.Length > 0)
                    Header(entry.Path);
                return reading.Refused?.ToString() ?? "taken";
            }
        );
    }

    [Fact]
    public void No_damage_makes_a_sidecar_throw_hang_or_fill_the_memory()
    {
        byte[][] corpus =
        [
            GoldenFacts.Sidecar,
            Encoding.UTF8.GetBytes(Shelf.Packet("xmp:Rating=\"3\" xmp:Label=\"Green\"")),
            Encoding.Unicode.GetBytes("\uFEFF" + Shelf.Packet("", "<xmp:Rating>3</xmp:Rating><xmp:Label rdf:parseType=\"Resource\"/>")),
        ];
        Damage(
            corpus,
            (bytes, shelf) =>
            {
                shelf.Put("a.xmp", bytes);
                return Sidecar.Read(shelf["a.xmp"]) is { } mark ? mark.VerdictBy(s_options)?.ToString() ?? "both" : "unread";
            }
        );
    }

    [Fact]
    public void The_same_number_is_the_same_damage()
    {
        Mutator one = new(FormatFacts.Corpus, Seed.From(1));
        Assert.Equal(one.Input(17).Bytes, new Mutator(FormatFacts.Corpus, Seed.From(1)).Input(17).Bytes);
        Assert.NotEqual(one.Input(17).Bytes, one.Input(18).Bytes);
    }

    /// <summary>What the readers of headers throw is a reason, not an accident that only the last catch would meet.</summary>
    private static void Header(string path)
    {
        using FileBytes file = new(path);
        try
        {
            PhotoHeader.Read(file);
        }
        catch (NotTakenException) { }

        Assert.InRange(file.Spent, 0, FileBytes.Budget);
    }

    private static void Damage(byte[][] corpus, Func<byte[], Shelf, string> read)
    {
        using Shelf shelf = new();
        Mutator mutator = new(corpus, Seed.From(20261126));
        Dictionary<string, int> became = [];
        for (var number = 0; number < Count; number++)
        {
            TestContext.Current.CancellationToken.ThrowIfCancellationRequested();
            var (origin, bytes) = mutator.Input(number);
            var kind = "";
            try
            {
                var cost = Cost.Of(() => kind = read(bytes, shelf));
                Assert.True(cost.Milliseconds <= LongestMs, FormattableString.Invariant($"It took {cost.Milliseconds:0} ms."));
                Assert.True(cost.Bytes <= MostAllocated, FormattableString.Invariant($"It allocated {cost.Bytes} bytes."));
            }
            catch (Exception fault)
            {
                throw new InvalidOperationException($"Input {number}, made of file {origin} of the corpus.", fault);
            }

            became[kind] = became.GetValueOrDefault(kind) + 1;
        }

        Assert.True(became.Count > 2, "The damage is of one kind only.");
        TestContext.Current.TestOutputHelper?.WriteLine(
            string.Join(", ", became.OrderBy(kind => kind.Key).Select(kind => $"{kind.Key} {kind.Value}"))
        );
    }
}
