using System.Globalization;

namespace Handhold;

/// <summary>A difference in exposure. +1 is one stop slower: twice the time.</summary>
/// <param name="Value">The difference in stops (factors of two of the exposure time).</param>
public readonly record struct Stops(double Value)
{
    /// <summary>The difference as people say it, such as <c>+1.3 stops</c>.</summary>
    public override string ToString() => Value.ToString("+0.0;-0.0;0.0", CultureInfo.InvariantCulture) + " stops";
}
