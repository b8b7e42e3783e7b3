using System.Globalization;
using System.Text.Json;

namespace Handhold.Photos.Tests;

public class GoldenFacts
{
    private const double Tolerance = 1e-8;

    private static readonly PhotoOptions s_rated = PhotoOptions.Default with { KeeperFromRating = 3 };

    public static TheoryData<string> Files => ["dial.jpg", "hall.tif", "movement.heic", "pendulum.jpg"];

    /// <summary>The bytes of the photographs, and of the sidecar.</summary>
    internal static IEnumerable<byte[]> Corpus => Files.Select(file => File.ReadAllBytes(Path.Combine(Folder, file.Data)));

    internal static byte[] Sidecar => File.ReadAllBytes(Path.Combine(Folder, "pendulum.xmp"));

    [Theory]
    [MemberData(nameof(Files))]
    public void Another_program_reads_the_same(string name)
    {
        var (photo, told) = (Photo(name), Told(name));
        var conditions = photo.Frame.Conditions;
        Close(Number(told, "ExposureTime") ?? Number(told, "ShutterSpeedValue"), photo.Frame.Exposure.Seconds);
        Close(Number(told, "FocalLength"), conditions.FocalLength);
        Close(Number(told, "FocalLengthIn35mmFormat"), conditions.EquivalentFocalLength);
        Close(Number(told, "SubjectDistance"), conditions.SubjectDistance);
        Close(10_000 / Number(told, "FocalPlaneXResolution"), conditions.PixelPitch);
        Assert.Equal($"{told.GetProperty("Model")} + {told.GetProperty("LensModel")}", conditions.Setup);
        var moment = DateTime.ParseExact(
            told.GetProperty("DateTimeOriginal").GetString()!,
            "yyyy:MM:dd HH:mm:ss",
            CultureInfo.InvariantCulture
        );
        Assert.Equal(moment.AddMilliseconds(10 * (Number(told, "SubSecTimeOriginal") ?? 0)), photo.Taken);
    }

    [Theory]
    [MemberData(nameof(Files))]
    public void Another_program_reads_the_same_rating(string name)
    {
        var rating = Number(Told(name), "Rating") ?? Number(Told(Path.ChangeExtension(name, ".xmp")), "Rating");
        Assert.Equal(rating >= 3 ? Verdict.Keeper : Verdict.Reject, Photo(name).Frame.Verdict);
        if (name == "dial.jpg")
            Assert.Equal(
                Verdict.Keeper,
                Photo(name, new() { KeeperFromLabel = Told(name).GetProperty("Label").GetString() }).Frame.Verdict
            );
    }

    private static Photo Photo(string name, PhotoOptions? options = null) =>
        Photographs
            .Read([Folder], options ?? s_rated, cancellation: TestContext.Current.CancellationToken)
            .Photos.Single(photo => Path.GetFileName(photo.Path) == name);

    private static JsonElement Told(string name)
    {
        using var expected = JsonDocument.Parse(File.ReadAllText(Path.Combine(Folder, "expected.json")));
        return expected.RootElement.EnumerateArray().Single(file => file.GetProperty("SourceFile").GetString() == name).Clone();
    }

    private static double? Number(JsonElement told, string tag) => told.TryGetProperty(tag, out var value) ? value.GetDouble() : null;

    private static void Close(double? told, double? read)
    {
        Assert.Equal(told is null, read is null);
        if (told is { } expected)
            Assert.InRange(read!.Value / expected, 1 - Tolerance, 1 + Tolerance);
    }

    private static string Folder
    {
        get
        {
            DirectoryInfo? folder = new(AppContext.BaseDirectory);
            while (folder is not null && !File.Exists(Path.Combine(folder.FullName, "Handhold.slnx")))
                folder = folder.Parent;
            return Path.Combine(folder!.FullName, "shared", "golden", "photographs");
        }
    }
}
