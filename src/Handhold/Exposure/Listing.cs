namespace Handhold;

/// <summary>Several things in a sentence.</summary>
internal static class Listing
{
    /// <summary><c>a</c>, <c>a and b</c>, <c>a, b and c</c>.</summary>
    internal static string And<T>(IEnumerable<T> things)
    {
        string[] said = [.. things.Select(thing => $"{thing}")];
        return said.Length < 2 ? string.Concat(said) : $"{string.Join(", ", said[..^1])} and {said[^1]}";
    }
}
