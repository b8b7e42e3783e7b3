namespace Handhold.Fitting;

/// <summary>The canonical order of pooled cells: by whom and with what, session, burst, exposure, then everything else as text.</summary>
internal sealed class CellOrder : IComparer<FrameCell>
{
    private CellOrder() { }

    internal static CellOrder Canonical { get; } = new();

    public int Compare(FrameCell? x, FrameCell? y)
    {
        var (a, b) = (x!.Conditions, y!.Conditions);
        return By(a.Photographer, b.Photographer) is not 0 and var photographer ? photographer
            : By(a.Setup, b.Setup) is not 0 and var setup ? setup
            : By(a.Session, b.Session) is not 0 and var session ? session
            : By(a.Burst, b.Burst) is not 0 and var burst ? burst
            : x.Exposure.Seconds.CompareTo(y.Exposure.Seconds) is not 0 and var exposure ? exposure
            : ReferenceEquals(a, b) ? 0
            : By(a.ToString(), b.ToString()) is not 0 and var text ? text
            : By(Others(a), Others(b));
    }

    private static int By(string? one, string? other) => StringComparer.Ordinal.Compare(one, other);

    private static string Others(Conditions all) => string.Join('\n', all.Others.Select(o => $"{o.Key}={o.Value}"));
}
