namespace Handhold.Plots;

/// <summary>Where one level stands: log2 seconds.</summary>
/// <param name="Name">Its label, after those it belongs to.</param>
/// <param name="Half">Its half-keeper exposure.</param>
/// <param name="Lower">Lower end of its interval; null is unbounded.</param>
/// <param name="Upper">Upper end; null is unbounded.</param>
/// <param name="Borrowed">Share of what is said of it that comes from the others.</param>
internal sealed record LevelRow(string Name, double Half, double? Lower, double? Upper, double Borrowed)
{
    /// <summary>Whether it is more the others' than its own.</summary>
    public bool IsMostlyBorrowed => Borrowed > 0.5;
}
