using System.Text;

namespace Handhold.Photos;

/// <summary>The value of one tag of a TIFF directory: a short copy of its bytes.</summary>
internal readonly record struct TagValue(ushort Type, byte[] Bytes, ByteOrder Order)
{
    private const ushort Ascii = 2;
    private const ushort Short = 3;
    private const ushort Long = 4;
    private const ushort UnsignedRatio = 5;
    private const ushort SignedRatio = 10;
    private const ushort Utf8 = 129;

    /// <summary>Bytes of one component; 0 for a type that no tag wanted here has.</summary>
    public static int SizeOf(ushort type) =>
        type switch
        {
            1 or Ascii or 7 or Utf8 => 1,
            Short => 2,
            Long or 13 => 4,
            UnsignedRatio or SignedRatio => 8,
            _ => 0,
        };

    public long? Whole =>
        Type == Short && Bytes.Length >= 2 ? Order.U16(Bytes)
        : Type == Long && Bytes.Length >= 4 ? Order.U32(Bytes)
        : null;

    /// <summary>A quotient that is a number; 1/0 and 0/0 are none.</summary>
    public double? Quotient =>
        Type is UnsignedRatio && Bytes.Length >= 8 ? Divided(Order.U32(Bytes), Order.U32(Bytes.AsSpan(4)))
        : Type is SignedRatio && Bytes.Length >= 8 ? Divided((int)Order.U32(Bytes), (int)Order.U32(Bytes.AsSpan(4)))
        : Whole;

    /// <summary>A quotient above 0. The largest numerator means infinity, where a tag knows it, and 0 unknown.</summary>
    public double? Positive =>
        Quotient is { } value and > 0 && !(Type == UnsignedRatio && Order.U32(Bytes) == uint.MaxValue) ? value : null;

    /// <summary>Text up to its end mark, without control characters and outer blanks; null where nothing is left.</summary>
    public string? Text
    {
        get
        {
            if (Type is not (Ascii or Utf8))
                return null;
            var end = Array.IndexOf(Bytes, (byte)0);
            var text = Encoding.UTF8.GetString(Bytes.AsSpan(0, end < 0 ? Bytes.Length : end));
            return PlainText.Of(text) is { Length: > 0 } plain ? plain : null;
        }
    }

    private static double? Divided(long over, long under) => under == 0 ? null : (double)over / under;
}
