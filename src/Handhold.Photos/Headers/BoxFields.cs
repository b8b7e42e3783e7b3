namespace Handhold.Photos;

/// <summary>Big-endian fields of a box, one after the other.</summary>
internal sealed class BoxFields(FileBytes file, long start, long end)
{
    private long _place = start;

    /// <summary>The next field of so many bytes, 0 to 8; none is 0.</summary>
    public long Number(int size)
    {
        if (size is < 0 or > 8 || _place > end - size)
            throw new NotTakenException(PhotoReason.Malformed);
        var number = 0L;
        foreach (var part in file.At(_place, size))
            number = (number << 8) | part;
        _place += size;
        return number;
    }

    public void Skip(long count) => _place += Math.Max(0, count);
}
