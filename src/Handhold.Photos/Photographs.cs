using System.Collections.Immutable;

namespace Handhold.Photos;

/// <summary>Reads folder trees of photographs. No pixel is decoded and nothing is written.</summary>
public static class Photographs
{
    /// <summary>Every photograph of these places as a frame; what cannot be read is named with its reason, and the rest goes on.</summary>
    /// <remarks>
    /// JPEG, TIFF, HEIF and the raw formats that are built alike, and sidecars: <c>photo.raw.xmp</c>, or <c>photo.xmp</c> for all files of that name.
    /// At most 256 kB are read of a photograph. The result depends neither on the order of places nor on threads.
    /// </remarks>
    /// <param name="places">Folders, read with all that is in them, and single files.</param>
    /// <param name="options">How photographs become frames.</param>
    /// <param name="progress">Told after every photograph, from several threads.</param>
    /// <param name="cancellation">Stops the reading between two files.</param>
    /// <exception cref="FileNotFoundException">A place does not exist.</exception>
    /// <exception cref="OperationCanceledException">The reading was stopped.</exception>
    public static PhotoImport Read(
        IEnumerable<string> places,
        PhotoOptions? options = null,
        IProgress<PhotoProgress>? progress = null,
        CancellationToken cancellation = default
    )
    {
        ArgumentNullException.ThrowIfNull(places);
        options ??= PhotoOptions.Default;
        var (entries, skipped) = PhotoTree.Walk(places, cancellation);
        var readings = new PhotoReading[entries.Length];
        PhotoFile file = new(options);
        var done = 0;
        Parallel.For(
            0,
            entries.Length,
            new ParallelOptions
            {
                MaxDegreeOfParallelism = options.Threads ?? Environment.ProcessorCount,
                CancellationToken = cancellation,
            },
            i =>
            {
                readings[i] = file.Read(entries[i]);
                progress?.Report(new(Interlocked.Increment(ref done), entries.Length));
            }
        );

        List<PhotoRemark> remarks = [];
        foreach (var (entry, reading) in entries.Zip(readings))
        {
            if (reading.Refused is { } reason)
                skipped.Add(new(entry.Shown, reason));
            remarks.AddRange(reading.Remarks.Select(remark => new PhotoRemark(entry.Shown, remark)));
        }

        var (photos, twins, differing) = Twins.Joined(readings.Select(reading => reading.Photo).OfType<Photo>());
        FileNumbers numbers = new(entries.Select(entry => entry.Shown));
        var named = new Occasions(options, numbers).Named(photos).OrderBy(photo => photo.Path, StringComparer.Ordinal).ToImmutableArray();
        var (marked, missing, survivors) = Survivors.Among(named, numbers);
        return new(marked, missing, Sorted([.. skipped, .. twins]), Sorted([.. remarks, .. differing, .. survivors]));
    }

    private static ImmutableArray<PhotoRemark> Sorted(List<PhotoRemark> remarks) =>
        [.. remarks.OrderBy(remark => remark.Path, StringComparer.Ordinal).ThenBy(remark => remark.Reason)];
}
