using System.Globalization;

namespace Handhold;

/// <summary>A half-normal prior: the size of a normal number of mean zero.</summary>
/// <param name="Scale">Standard deviation of the normal number, positive.</param>
public sealed record HalfNormalPrior(double Scale)
{
    /// <summary>As it is written: <c>half-normal(0.35)</c>.</summary>
    public override string ToString() => string.Create(CultureInfo.InvariantCulture, $"half-normal({Scale:0.####})");
}
