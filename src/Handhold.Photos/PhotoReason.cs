namespace Handhold.Photos;

/// <summary>Why a file was not taken, or what about a photograph deserves a look.</summary>
public enum PhotoReason
{
    /// <summary>Not taken: it is no photograph by its name.</summary>
    OtherFile,

    /// <summary>Not taken: a sidecar without its photograph.</summary>
    SidecarAlone,

    /// <summary>Not taken: the file is empty, or no ordinary file, such as a pipe.</summary>
    Empty,

    /// <summary>Not taken: a link to a folder, or a link that leads nowhere. Folders behind links are not walked, so that no loop is.</summary>
    Link,

    /// <summary>Not taken: reading it is not permitted.</summary>
    NotPermitted,

    /// <summary>Not taken: it vanished during the walk, or its name is not text.</summary>
    Vanished,

    /// <summary>Not taken: the disk or the network did not hand it out.</summary>
    NotReadable,

    /// <summary>Not taken: the content is no format that is read.</summary>
    OtherFormat,

    /// <summary>Not taken: the file ends before its metadata do.</summary>
    EndsEarly,

    /// <summary>Not taken: more would have to be read than any photograph's metadata need.</summary>
    TooLong,

    /// <summary>Not taken: the metadata contradict themselves.</summary>
    Malformed,

    /// <summary>Not taken: no exposure time is recorded.</summary>
    NoExposure,

    /// <summary>Not taken: what is recorded is no exposure time, such as 1/0.</summary>
    ImpossibleExposure,

    /// <summary>Not taken: put together from several exposures.</summary>
    Composite,

    /// <summary>Not taken: the same frame as another file beside it, such as the JPEG of a raw file.</summary>
    SameFrame,

    /// <summary>Taken: the exposure time and the APEX value differ by more than 0.1 stop; the exposure time counts.</summary>
    ExposuresDiffer,

    /// <summary>Taken: no exposure time is recorded, and the APEX value stands in.</summary>
    ApexOnly,

    /// <summary>Taken: no capture time is recorded, so the frame has no session and no burst.</summary>
    NoTime,

    /// <summary>Taken without its distance, at which its lens cannot focus.</summary>
    ImpossibleDistance,

    /// <summary>Taken: the sidecar cannot be read; the photograph's own rating counts.</summary>
    SidecarUnread,

    /// <summary>Taken: the rating inside the photograph cannot be read.</summary>
    RatingUnread,

    /// <summary>Taken: photograph and sidecar differ in rating or label; precedence decided.</summary>
    RatingsDiffer,

    /// <summary>Taken as not judged: rating and label, or two files of one frame, say opposite things.</summary>
    VerdictsDiffer,

    /// <summary>Taken: the file numbers after it have a gap, as after deleting. The missing frames count as not judged.</summary>
    NumbersMissing,

    /// <summary>A folder whose judged frames are all keepers, as after deleting the rejects: its keeper rates may be too high.</summary>
    NoRejects,
}
