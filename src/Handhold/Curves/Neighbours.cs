namespace Handhold.Curves;

/// <summary>Neighbours in a sequence that are alike.</summary>
internal static class Neighbours
{
    /// <summary>The sequence with neighbours made one.</summary>
    /// <param name="sequence">The sequence.</param>
    /// <param name="join">What the two make; null where they stay two.</param>
    internal static IEnumerable<T> Joined<T>(IEnumerable<T> sequence, Func<T, T, T?> join)
        where T : class
    {
        T? last = null;
        foreach (var next in sequence)
        {
            if (last is null)
                last = next;
            else if (join(last, next) is { } both)
                last = both;
            else
            {
                yield return last;
                last = next;
            }
        }

        if (last is not null)
            yield return last;
    }
}
