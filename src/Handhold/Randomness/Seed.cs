namespace Handhold.Randomness;

/// <summary>Where chance starts. The same seed and stream give the same draws on any number of threads.</summary>
public readonly record struct Seed
{
    private Seed(ulong key) => Key = key;

    /// <summary>Name and version of the generator; a change of any draw would change it.</summary>
    public static string Generator => "philox4x32-10/1";

    internal ulong Key { get; }

    /// <summary>A seed of this number; every number is as good as any other.</summary>
    public static Seed From(long number) => new(unchecked((ulong)number));

    /// <summary>Stream number <paramref name="index"/> of this seed, from its beginning.</summary>
    /// <remarks>Two streams never share a draw: stream and position are parts of the counter that the generator encrypts.</remarks>
    /// <param name="index">Any number; usually that of a replicate.</param>
    public RandomStream Stream(long index) => new(Key, unchecked((ulong)index));
}
