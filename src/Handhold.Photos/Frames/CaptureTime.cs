using System.Globalization;

namespace Handhold.Photos;

/// <summary>DateTimeOriginal with the digits of SubSecTimeOriginal behind its point (CIPA DC-008 section 4.6.5).</summary>
internal static class CaptureTime
{
    private const int Digits = 7;

    public static DateTime? Of(HeaderTags tags)
    {
        if (
            !DateTime.TryParseExact(
                tags[HeaderTags.TakenAt]?.Text,
                "yyyy:MM:dd HH:mm:ss",
                CultureInfo.InvariantCulture,
                DateTimeStyles.None,
                out var second
            )
        )
            return null;
        var part = tags[HeaderTags.SubSecond]?.Text;
        return part is not null && part.All(char.IsAsciiDigit)
            ? second.AddTicks(int.Parse(part.PadRight(Digits, '0')[..Digits], NumberStyles.None, CultureInfo.InvariantCulture))
            : second;
    }
}
