namespace Handhold.Photos;

/// <summary>One thing about one file: why it was not taken, or what about it deserves a look.</summary>
public sealed class PhotoRemark
{
    internal PhotoRemark(string path, PhotoReason reason) => (Path, Reason) = (path, reason);

    /// <summary>The file, as <see cref="Photo.Path"/>.</summary>
    public string Path { get; }

    /// <summary>The kind of remark.</summary>
    public PhotoReason Reason { get; }

    /// <summary>The reason as a clause, the same for all files of a kind.</summary>
    public string Message =>
        Reason switch
        {
            PhotoReason.OtherFile => "no photograph by its name",
            PhotoReason.SidecarAlone => "a sidecar without its photograph",
            PhotoReason.Empty => "the file is empty, or no ordinary file",
            PhotoReason.Link => "a link to a folder, which is not followed, or one that leads nowhere",
            PhotoReason.NotPermitted => "reading it is not permitted",
            PhotoReason.Vanished => "it vanished meanwhile, or its name is not text",
            PhotoReason.NotReadable => "the disk or the network did not hand it out",
            PhotoReason.OtherFormat => "its content is no format that is read",
            PhotoReason.EndsEarly => "the file ends before its metadata do",
            PhotoReason.TooLong => "its metadata do not end within 256 kB",
            PhotoReason.Malformed => "its metadata contradict themselves",
            PhotoReason.NoExposure => "no exposure time is recorded",
            PhotoReason.ImpossibleExposure => "the exposure time recorded is none, such as 1/0",
            PhotoReason.Composite => "put together from several exposures",
            PhotoReason.SameFrame => "the same frame as another file beside it",
            PhotoReason.ExposuresDiffer => "exposure time and APEX value differ by more than 0.1 stop; the exposure time counts",
            PhotoReason.ApexOnly => "no exposure time is recorded; its APEX value stands in",
            PhotoReason.NoTime => "no capture time is recorded, so the frame belongs to no session and no burst",
            PhotoReason.ImpossibleDistance => "the distance recorded is one at which the lens cannot focus, and is left out",
            PhotoReason.SidecarUnread => "the sidecar cannot be read; the photograph's own rating counts",
            PhotoReason.RatingUnread => "the rating inside cannot be read",
            PhotoReason.RatingsDiffer => "photograph and sidecar differ in rating or label",
            PhotoReason.VerdictsDiffer => "what is recorded makes it both a keeper and a reject, so it is not judged",
            PhotoReason.NumbersMissing => "file numbers are missing after it, as after deleting; those frames count as not judged",
            PhotoReason.NoRejects => "no frame in this folder was judged a reject; if rejects were deleted, its keeper rates are too high",
            _ => Reason.ToString(),
        };

    /// <inheritdoc/>
    public override string ToString() => $"{Path}: {Message}";
}
