namespace Handhold.Photos;

/// <summary>Reads one photograph and its sidecar. Nothing that lies in a file makes it throw.</summary>
internal sealed class PhotoFile(PhotoOptions options)
{
    private const long PartOfComposite = 2;

    private readonly SetupLabels _labels = new(options.SerialSalt);

    public PhotoReading Read(PhotoEntry entry)
    {
        try
        {
            if (OrdinaryFile.Refusal(entry.Path) is { } reason)
                return No(reason);
            using FileBytes file = new(entry.Path);
            return Read(file, entry);
        }
        catch (NotTakenException refused)
        {
            return No(refused.Reason);
        }
        catch (UnauthorizedAccessException)
        {
            return No(PhotoReason.NotPermitted);
        }
        catch (Exception gone) when (gone is FileNotFoundException or DirectoryNotFoundException)
        {
            return No(PhotoReason.Vanished);
        }
        catch (IOException)
        {
            return No(PhotoReason.NotReadable);
        }
#pragma warning disable CA1031 // files are made by strangers: a fault in one must not lose the others
        catch (Exception)
#pragma warning restore CA1031
        {
            return No(PhotoReason.Malformed);
        }
    }

    private static PhotoReading No(PhotoReason reason) => new(null, reason, []);

    private PhotoReading Read(FileBytes file, PhotoEntry entry)
    {
        var tags = PhotoHeader.Read(file);
        if (tags[HeaderTags.CompositeImage]?.Whole >= PartOfComposite)
            throw new NotTakenException(PhotoReason.Composite);
        List<PhotoReason> remarks = [];
        var exposure = Noted(RecordedExposure.Of(tags), remarks);
        var conditions = Noted(RecordedConditions.Of(tags, _labels), remarks);
        var taken = CaptureTime.Of(tags);
        if (taken is null)
            remarks.Add(PhotoReason.NoTime);
        var verdict = Settled(Inside(file, tags, remarks), entry.Sidecar, remarks).VerdictBy(options);
        if (verdict is null)
            remarks.Add(PhotoReason.VerdictsDiffer);
        return new(
            new(entry.Shown, taken, new ShotFrame(exposure, verdict ?? Verdict.NotJudged) { Conditions = conditions }),
            null,
            [.. remarks]
        );
    }

    private static T Noted<T>((T Value, PhotoReason? Remark) read, List<PhotoReason> remarks)
    {
        if (read.Remark is { } remark)
            remarks.Add(remark);
        return read.Value;
    }

    private static Mark Inside(FileBytes file, HeaderTags tags, List<PhotoReason> remarks)
    {
        if (tags.Xmp is not var (offset, length))
            return default;
        var mark =
            length <= FileBytes.Budget - file.Spent && offset >= 0 && offset <= file.Length - length
                ? XmpMark.Of(file.At(offset, (int)length).ToArray())
                : null;
        if (mark is null)
            remarks.Add(PhotoReason.RatingUnread);
        return mark ?? default;
    }

    private Mark Settled(Mark inside, string? sidecar, List<PhotoReason> remarks)
    {
        if (sidecar is null)
            return inside;
        if (Sidecar.Read(sidecar) is not { } beside)
        {
            remarks.Add(PhotoReason.SidecarUnread);
            return inside;
        }

        if (beside.Contradicts(inside))
            remarks.Add(PhotoReason.RatingsDiffer);
        return options.Precedence == MetadataPrecedence.Photograph ? inside.Or(beside) : beside.Or(inside);
    }
}
