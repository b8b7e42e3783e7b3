namespace Handhold.Randomness;

/// <summary>A keyed bijection of 128-bit counters whose outputs pass for independent uniform bits.</summary>
/// <remarks>
/// Philox 4x32 with ten rounds. One round multiplies words 0 and 2 by fixed odd numbers into 64-bit products; each high half, xored with the
/// neighbouring word and a key word, takes that neighbour's place, and each low half moves on. Between rounds the two key words grow by the
/// golden ratio and by sqrt(3) - 1, both times 2^32. There is no state: the same counter and key always give the same four words.
/// Source: Salmon, Moraes, Dror, Shaw (2011), Parallel random numbers: as easy as 1, 2, 3, section 3.3. Checked against its authors'
/// known answers.
/// </remarks>
internal static class Philox
{
    private const int Rounds = 10;

    /// <summary>The four output words, two by two: (word 0 | word 1 shifted up, word 2 | word 3 shifted up).</summary>
    /// <param name="counterLow">Counter words 0 (low half) and 1 (high half).</param>
    /// <param name="counterHigh">Counter words 2 and 3.</param>
    /// <param name="key">Key words 0 and 1.</param>
    internal static (ulong Low, ulong High) Block(ulong counterLow, ulong counterHigh, ulong key)
    {
        var (c0, c1) = ((uint)counterLow, (uint)(counterLow >> 32));
        var (c2, c3) = ((uint)counterHigh, (uint)(counterHigh >> 32));
        var (k0, k1) = ((uint)key, (uint)(key >> 32));
        for (var round = 0; round < Rounds; round++)
        {
            var a = 0xD2511F53UL * c0;
            var b = 0xCD9E8D57UL * c2;
            (c0, c1, c2, c3) = ((uint)(b >> 32) ^ c1 ^ k0, (uint)b, (uint)(a >> 32) ^ c3 ^ k1, (uint)a);
            k0 += 0x9E3779B9;
            k1 += 0xBB67AE85;
        }
        return (c0 | ((ulong)c1 << 32), c2 | ((ulong)c3 << 32));
    }
}
