namespace Handhold.Tables;

/// <summary>How many letters apart two words are.</summary>
internal static class SpellingDistance
{
    /// <summary>Letters added, dropped, changed, or swapped with their neighbour; case does not count.</summary>
    public static int Between(ReadOnlySpan<char> a, ReadOnlySpan<char> b)
    {
        if (Math.Abs(a.Length - b.Length) > 2)
        {
            return 3; // far enough, and no need to look at names as long as a book
        }
        var distance = new int[a.Length + 1, b.Length + 1];
        for (var i = 0; i <= a.Length; i++)
        {
            for (var j = 0; j <= b.Length; j++)
            {
                distance[i, j] =
                    i == 0 || j == 0
                        ? i + j
                        : Math.Min(
                            Math.Min(distance[i - 1, j], distance[i, j - 1]) + 1,
                            distance[i - 1, j - 1] + (Same(a[i - 1], b[j - 1]) ? 0 : 1)
                        );
                if (i > 1 && j > 1 && Same(a[i - 1], b[j - 2]) && Same(a[i - 2], b[j - 1]))
                {
                    distance[i, j] = Math.Min(distance[i, j], distance[i - 2, j - 2] + 1);
                }
            }
        }
        return distance[a.Length, b.Length];
    }

    private static bool Same(char a, char b) => char.ToLowerInvariant(a) == char.ToLowerInvariant(b);
}
