using System.Buffers.Binary;

namespace Handhold.Photos;

/// <summary>Numbers of either byte order.</summary>
internal readonly record struct ByteOrder(bool BigEndian)
{
    public ushort U16(ReadOnlySpan<byte> bytes) =>
        BigEndian ? BinaryPrimitives.ReadUInt16BigEndian(bytes) : BinaryPrimitives.ReadUInt16LittleEndian(bytes);

    public uint U32(ReadOnlySpan<byte> bytes) =>
        BigEndian ? BinaryPrimitives.ReadUInt32BigEndian(bytes) : BinaryPrimitives.ReadUInt32LittleEndian(bytes);
}
