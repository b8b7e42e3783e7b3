using System.Buffers.Binary;
using System.Text;

namespace Handhold.Plots;

/// <summary>Words inside a PNG, in UTF-8, as an <c>iTXt</c> chunk with the keyword Description. Source: Portable Network Graphics, third edition, 11.3.3.</summary>
internal static class PngText
{
    /// <summary>Signature, and the header chunk that must be the first.</summary>
    private const int Head = 8 + 25;

    private const uint Polynomial = 0xEDB88320;

    public static byte[] Describe(byte[] png, string words)
    {
        // Keyword, end of keyword, not compressed, method, no language, no translated keyword.
        byte[] content = [.. "iTXtDescription\0\0\0\0\0"u8, .. Encoding.UTF8.GetBytes(words)];
        var chunk = new byte[content.Length + 8];
        BinaryPrimitives.WriteInt32BigEndian(chunk, content.Length - 4);
        content.CopyTo(chunk, 4);
        BinaryPrimitives.WriteUInt32BigEndian(chunk.AsSpan(4 + content.Length), Checksum(content));
        return [.. png.AsSpan(0, Head), .. chunk, .. png.AsSpan(Head)];
    }

    private static uint Checksum(ReadOnlySpan<byte> bytes)
    {
        var rest = uint.MaxValue;
        foreach (var b in bytes)
        {
            rest ^= b;
            for (var bit = 0; bit < 8; bit++)
            {
                rest = (rest >> 1) ^ (Polynomial & (0 - (rest & 1)));
            }
        }

        return ~rest;
    }
}
