using System.Globalization;

namespace Handhold.Prediction;

/// <summary>Numbers as people say them.</summary>
internal static class Say
{
    /// <summary>A rate or chance in per cent: <c>87 %</c>, with more digits near the ends, never 0 or 100 unless exact.</summary>
    internal static string Percent(double share)
    {
        var percent = 100 * share;
        var text =
            percent is > 0 and < 0.1 ? "under 0.1"
            : percent is > 99.9 and < 100 ? "over 99.9"
            : percent is < 1 or > 99 ? percent.ToString("0.#", CultureInfo.InvariantCulture)
            : percent.ToString("0", CultureInfo.InvariantCulture);
        return text + " %";
    }

    internal static string Keepers(int count) => Count(count, "keeper");

    internal static string Frames(int count) => Count(count, "frame");

    internal static string Count(int count, string what) =>
        count.ToString(CultureInfo.InvariantCulture) + " " + what + (count == 1 ? "" : "s");

    /// <summary>A difference in stops with its sign: <c>+1.3</c>.</summary>
    internal static string Change(double stops) => stops.ToString("+0.0;-0.0;0.0", CultureInfo.InvariantCulture);

    /// <summary>The size of a difference in stops: <c>1.3</c>.</summary>
    internal static string Size(double stops) => Math.Abs(stops).ToString("0.0", CultureInfo.InvariantCulture);

    internal static string Number(double value) => value.ToString("0.#", CultureInfo.InvariantCulture);
}
