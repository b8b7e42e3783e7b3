using Microsoft.Win32.SafeHandles;

namespace Handhold.Photos;

/// <summary>A file read through a small window, and never more of it than <see cref="Budget"/>.</summary>
internal sealed class FileBytes(string path) : IDisposable
{
    /// <summary>Bytes read of one photograph at most.</summary>
    public const int Budget = 256 << 10;

    private const int Window = 4 << 10;

    private readonly SafeFileHandle _file = File.OpenHandle(path, share: FileShare.ReadWrite | FileShare.Delete);
    private byte[] _window = [];
    private long _start;
    private int _filled;

    public long Length => RandomAccess.GetLength(_file);

    public int Spent { get; private set; }

    /// <summary>Whether another window can be read.</summary>
    public bool HasBudget => Budget - Spent >= Window;

    /// <summary>Bytes of the file, good until the next call.</summary>
    /// <exception cref="NotTakenException">The file ends before, or the budget does.</exception>
    public ReadOnlySpan<byte> At(long offset, int count)
    {
        if (offset < _start || offset - _start > _filled - count)
            Load(offset, count);
        return _window.AsSpan((int)(offset - _start), count);
    }

    public void Dispose() => _file.Dispose();

    private void Load(long offset, int count)
    {
        var length = Length;
        if (offset < 0 || offset > length - count)
            throw new NotTakenException(PhotoReason.EndsEarly);
        if (count > Budget - Spent)
            throw new NotTakenException(PhotoReason.TooLong);
        var wanted = (int)Math.Min(Math.Min(Math.Max(count, Window), Budget - Spent), length - offset);
        if (_window.Length < wanted)
            _window = new byte[wanted];
        (_start, _filled) = (offset, 0);
        while (_filled < wanted)
        {
            var read = RandomAccess.Read(_file, _window.AsSpan(_filled, wanted - _filled), offset + _filled);
            if (read == 0)
                break;
            _filled += read;
            Spent += read;
        }

        if (_filled < count)
            throw new NotTakenException(PhotoReason.EndsEarly); // it became shorter meanwhile
    }
}
