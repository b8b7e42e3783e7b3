using System.Buffers.Binary;

namespace Handhold.Photos;

/// <summary>Tells formats apart by their first bytes and reads their header.</summary>
internal static class PhotoHeader
{
    private const int Shortest = 16;

    /// <summary>Where a raw file of Fujifilm says its JPEG begins, which carries the metadata.</summary>
    private const int FujifilmJpeg = 84;

    public static HeaderTags Read(FileBytes file)
    {
        HeaderTags tags = new();
        if (file.Length < Shortest)
            throw new NotTakenException(PhotoReason.EndsEarly);
        var first = file.At(0, Shortest);
        if (JpegHeader.Begins(first))
            JpegHeader.Read(file, 0, tags);
        else if (TiffHeader.Begins(first))
            TiffHeader.Read(file, 0, file.Length, tags);
        else if (BoxedHeader.Begins(first))
            BoxedHeader.Read(file, tags);
        else if (first.StartsWith("FUJIFILMCCD-RAW "u8))
            JpegHeader.Read(file, BinaryPrimitives.ReadUInt32BigEndian(file.At(FujifilmJpeg, 4)), tags);
        else
            throw new NotTakenException(PhotoReason.OtherFormat);
        return tags;
    }
}
