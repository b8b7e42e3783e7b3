using System.Buffers.Binary;
using Handhold.Randomness;

namespace Handhold.Photos.Tests;

/// <summary>Damages bytes by chance, the same way for the same number.</summary>
internal sealed class Mutator(IReadOnlyList<byte[]> corpus, Seed seed)
{
    private const int MostWounds = 6;
    private const int Longest = 64 << 10;

    private static readonly uint[] s_awkward =
    [
        0,
        1,
        2,
        4,
        7,
        8,
        0x7F,
        0xFF,
        0x100,
        0x7FFF,
        0xFFFF,
        0x10000,
        0x7FFFFFFF,
        0x80000000,
        0xFFFFFFFE,
        0xFFFFFFFF,
    ];

    /// <summary>The input of that number, and which of the corpus it was.</summary>
    public (int Origin, byte[] Bytes) Input(long number)
    {
        var chance = seed.Stream(number);
        var origin = Below(chance, corpus.Count);
        List<byte> bytes = [.. corpus[origin]];
        for (var wounds = chance.Happens(0.5) ? 1 : 1 + Below(chance, MostWounds); wounds > 0 && bytes.Count > 0; wounds--)
            Wound(bytes, chance);
        return (origin, [.. bytes.Take(Longest)]);
    }

    private void Wound(List<byte> bytes, RandomStream chance)
    {
        var place = Place(bytes.Count, chance);
        var length = Math.Min(bytes.Count - place, 1 + Below(chance, 64));
        switch (Below(chance, 8))
        {
            case 0:
                bytes[place] ^= (byte)(1 << Below(chance, 8));
                break;
            case 1:
                bytes[place] = (byte)chance.Bits();
                break;
            case 2 or 3:
                Awkward(bytes, place, chance);
                break;
            case 4:
                bytes.RemoveRange(place, length);
                break;
            case 5:
                bytes.InsertRange(place, bytes.GetRange(place, length));
                break;
            case 6:
                bytes.RemoveRange(place, bytes.Count - place);
                break;
            default:
                var other = corpus[Below(chance, corpus.Count)];
                bytes.InsertRange(place, other.Skip(Below(chance, other.Length)).Take(1 + Below(chance, 512)));
                break;
        }
    }

    /// <summary>Half of the places are in the first bytes, where the structure is.</summary>
    private static int Place(int count, RandomStream chance) => Below(chance, chance.Happens(0.5) ? Math.Min(count, 256) : count);

    private static void Awkward(List<byte> bytes, int place, RandomStream chance)
    {
        var number = s_awkward[Below(chance, s_awkward.Length)];
        var four = new byte[4];
        if (chance.Happens(0.5))
            BinaryPrimitives.WriteUInt32BigEndian(four, number);
        else
            BinaryPrimitives.WriteUInt32LittleEndian(four, number);
        var length = chance.Happens(0.5) ? 2 : 4;
        for (var i = 0; i < length && place + i < bytes.Count; i++)
            bytes[place + i] = four[i];
    }

    private static int Below(RandomStream chance, int count) => (int)(chance.Uniform() * count);
}
