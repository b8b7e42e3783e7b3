using System.Globalization;

namespace Handhold;

/// <summary>A prior of the correlation of two numbers, with density proportional to (1 - rho²)^(shape - 1): 1 is uniform, larger shapes favour none.</summary>
/// <remarks>Source: Lewandowski, Kurowicka and Joe (2009), Journal of Multivariate Analysis 100, 1989-2001; for two numbers (rho + 1) / 2 is beta(shape, shape).</remarks>
/// <param name="Shape">Shape, positive.</param>
public sealed record LkjPrior(double Shape)
{
    /// <summary>As it is written: <c>lkj(2)</c>.</summary>
    public override string ToString() => string.Create(CultureInfo.InvariantCulture, $"lkj({Shape:0.####})");
}
