namespace Handhold;

/// <summary>What was called sharp: on a print, at pixels, or by a rule of the user's own.</summary>
/// <param name="Name"><c>print</c>, <c>pixel</c>, or the user's own name. Compared exactly.</param>
public sealed record Criterion(string Name)
{
    /// <summary>Judged on a print: 30 µm of blur on a 24 x 36 mm frame pass.</summary>
    public static Criterion Print { get; } = new("print");

    /// <summary>Judged at single pixels, on a screen at 100 %.</summary>
    public static Criterion Pixel { get; } = new("pixel");

    /// <summary>The criterion's name.</summary>
    public override string ToString() => Name;
}
