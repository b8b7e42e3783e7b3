using System.Globalization;
using System.Runtime.CompilerServices;

namespace Handhold;

/// <summary>Ranges that numbers given by a caller must keep.</summary>
internal static class Check
{
    /// <summary>A number above 0 and finite, or an error that says what was given.</summary>
    internal static double Positive(
        double value,
        string what,
        string unit,
        [CallerArgumentExpression(nameof(value))] string? parameter = null
    ) =>
        value > 0 && double.IsFinite(value)
            ? value
            : throw new ArgumentOutOfRangeException(
                parameter,
                string.Create(CultureInfo.InvariantCulture, $"{what} is {value}{unit}. Give a finite number above 0{unit}.")
            );

    /// <summary>A number from 0 up and finite, or an error that says what was given.</summary>
    internal static double NotNegative(
        double value,
        string what,
        string unit,
        [CallerArgumentExpression(nameof(value))] string? parameter = null
    ) => value == 0 ? value : Positive(value, what, unit, parameter);

    /// <summary>A share above 0 and below 1, or an error that says what was given.</summary>
    internal static double Share(double value, string what, [CallerArgumentExpression(nameof(value))] string? parameter = null) =>
        value is > 0 and < 1
            ? value
            : throw new ArgumentOutOfRangeException(
                parameter,
                string.Create(CultureInfo.InvariantCulture, $"{what} is {value}. Give a share above 0 and below 1, such as 0.95.")
            );

    /// <summary>A count within bounds, or an error that says what was given.</summary>
    internal static int Count(
        int value,
        int least,
        int most,
        string what,
        [CallerArgumentExpression(nameof(value))] string? parameter = null
    ) =>
        value >= least && value <= most
            ? value
            : throw new ArgumentOutOfRangeException(
                parameter,
                string.Create(CultureInfo.InvariantCulture, $"{what}: {value}. Give a whole number from {least} to {most}.")
            );
}
