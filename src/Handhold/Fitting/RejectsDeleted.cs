namespace Handhold.Fitting;

/// <summary>Frames whose column <c>rejects_deleted</c> says that rejects went before anyone judged them.</summary>
internal static class RejectsDeleted
{
    internal static (int Judged, int Deleted) Among(IReadOnlyCollection<FrameCell> rows)
    {
        FrameCell[] marked =
        [
            .. rows.Where(r => r.Conditions["rejects_deleted"] is { } said && !said.Equals("no", StringComparison.OrdinalIgnoreCase)),
        ];
        return (
            marked.Sum(r => r.Frames) + rows.Sum(r => r.Survivors.Judged),
            marked.Sum(r => r.Unjudged) + rows.Sum(r => r.Survivors.Deleted)
        );
    }

    internal static Status? Of(CurveData data)
    {
        var (judged, deleted) = data.Survivors;
        string[] signs =
        [
            .. judged == 0 ? (string[])[] : [$"{Frames(judged)} of {data.Frames} judged come from where no reject was left"],
            .. deleted == 0
                ? (string[])[]
                : [$"{Frames(deleted)} not judged {(deleted == 1 ? "is" : "are")} missing from the count of files"],
        ];
        return signs.Length == 0
            ? null
            : new(
                StatusCode.FramesDeleted,
                $"Rejects were probably deleted before anyone judged them: {string.Join(", and ", signs)}. Keepers are then too frequent and speeds look slower than they are. Judge before deleting; where nothing was deleted, say so (rejects_deleted no)."
            );
    }

    private static string Frames(int count) => FormattableString.Invariant($"{count} frame{(count == 1 ? "" : "s")}");
}
