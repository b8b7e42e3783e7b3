using System.Globalization;
using System.Runtime.CompilerServices;

namespace Handhold;

/// <summary>Ranges that photographic numbers must keep.</summary>
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
}
