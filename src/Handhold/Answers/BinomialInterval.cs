namespace Handhold;

/// <summary>Intervals for a rate from a count alone.</summary>
public static class BinomialInterval
{
    /// <summary>Wilson's score interval.</summary>
    public static ConfidenceInterval Wilson(int keepers, int frames, double level = 0.95) => throw new NotSupportedException();

    /// <summary>Clopper and Pearson's exact interval.</summary>
    public static ConfidenceInterval ClopperPearson(int keepers, int frames, double level = 0.95) => throw new NotSupportedException();
}
