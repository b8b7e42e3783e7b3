using System.Globalization;

namespace Handhold;

public readonly partial record struct ShutterSpeed
{
    private const double DecimalFrom = 0.3; // cameras mark 1/4, then 0.3

    /// <summary>The speed as cameras and people write it: <c>1/60 s</c>, <c>0.5 s</c>, <c>1.3 s</c>.</summary>
    /// <remarks>
    /// A time within <see cref="SameSpeedTolerance"/> of a third-stop mark is written as that mark, any other with two or three digits;
    /// what is written is always the same speed to a reader. <see cref="ToExactText"/> loses nothing.
    /// </remarks>
    public override string ToString() => _seconds > 0 ? ToShortText() + " s" : "no shutter speed";

    /// <summary>As <see cref="ToString"/> without the unit: <c>1/60</c>, <c>0.5</c>, <c>1.3</c>.</summary>
    public string ToShortText()
    {
        var mark = MarkedSpeeds.Nearest(this, Marks.Third);
        return Spell((IsSameSpeed(mark) ? mark : this).Seconds);
    }

    /// <summary>A text that <see cref="Parse"/> reads back to exactly this speed: <c>1/60</c> where that is exact, else seconds such as <c>0.016667</c>.</summary>
    public string ToExactText()
    {
        var denominator = Math.Round(1 / Seconds);
        return Seconds < DecimalFrom && denominator <= 1e6 && 1 / denominator == Seconds
            ? string.Create(CultureInfo.InvariantCulture, $"1/{denominator}")
            : Seconds.ToString("R", CultureInfo.InvariantCulture);
    }

    private static string Spell(double seconds)
    {
        var denominator = 1 / seconds;
        var whole = Math.Round(denominator);
        var wholeFits = Math.Abs(Math.Log2(whole * seconds)) <= SameSpeedTolerance;
        if (seconds < DecimalFrom && denominator < 100_000 && (wholeFits || denominator >= 10))
            return string.Create(CultureInfo.InvariantCulture, $"1/{(wholeFits ? whole : denominator):0.#}");
        return seconds.ToString(seconds is >= 100 and < 1e6 ? "0" : "G3", CultureInfo.InvariantCulture);
    }
}
