using System.Buffers.Binary;
using System.Text;

namespace Handhold.Photos;

/// <summary>A box of a file of boxes (ISO 14496-12 section 4.2): four letters, and where its content lies.</summary>
internal readonly record struct Box(string Type, long Start, long End)
{
    /// <summary>The boxes between two places of a file, one after the other.</summary>
    public static IEnumerable<Box> Within(FileBytes file, long start, long end)
    {
        while (start <= end - 8)
        {
            var (box, next) = At(file, start, end);
            yield return box;
            start = next;
        }
    }

    private static (Box, long Next) At(FileBytes file, long start, long end)
    {
        long size = BinaryPrimitives.ReadUInt32BigEndian(file.At(start, 4));
        var type = Encoding.Latin1.GetString(file.At(start + 4, 4));
        var header = 8;
        if (size == 1)
        {
            size = BinaryPrimitives.ReadInt64BigEndian(file.At(start + 8, 8));
            header = 16;
        }
        else if (size == 0)
            size = end - start;
        if (size < header || size > end - start)
            throw new NotTakenException(size < header ? PhotoReason.Malformed : PhotoReason.EndsEarly);
        return (new(type, start + header, start + size), start + size);
    }
}
