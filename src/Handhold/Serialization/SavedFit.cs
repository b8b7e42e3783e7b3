namespace Handhold;

/// <summary>Fits as JSON text, to be kept and asked again.</summary>
public static class SavedFit
{
    /// <summary>The JSON of a fit.</summary>
    public static string Write(FittedCurves curves) => throw new NotSupportedException();

    /// <summary>Reads what <see cref="Write"/> wrote.</summary>
    public static FittedCurves Read(string json) => throw new NotSupportedException();
}
