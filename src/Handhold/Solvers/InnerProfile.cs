using System.Collections.Immutable;
using Handhold.Kernels;

namespace Handhold.Solvers;

/// <summary>What a likelihood with its maximum inside loses when a contrast, or a spread, is held.</summary>
internal abstract class InnerProfile(BinomialEstimate estimate, double level) : IProfile
{
    private const int Strides = 60;

    /// <inheritdoc />
    public double Bound { get; } = -Normal.Quantile((1 - level) / 2);

    /// <inheritdoc />
    public BinomialEstimate Estimate => estimate;

    /// <inheritdoc />
    public bool Moved { get; set; }

    /// <inheritdoc />
    public Cone? Cone => null;

    /// <inheritdoc />
    public double Limit(ImmutableArray<double> contrast) => Orthonormal.Dot(contrast.AsSpan(), Estimate.Coefficients.AsSpan());

    /// <inheritdoc />
    public double Step(ImmutableArray<double> contrast) => Bound * Estimate.StandardError(contrast);

    /// <inheritdoc />
    public abstract double Excess(ImmutableArray<double> contrast, double value);

    /// <summary>The spreads that are not rejected; from zero where zero is one, without end where none is too large.</summary>
    /// <param name="excess">As <see cref="Excess"/>, of a spread.</param>
    /// <param name="top">The estimate.</param>
    /// <param name="error">Its standard error, where it has one.</param>
    /// <param name="isEndless">Whether the likelihood rises with the spread without end.</param>
    protected (double Lower, double? Upper) Spreads(Func<double, double> excess, double top, double? error, bool isEndless = false)
    {
        var lower = top > 0 && excess(0) > 0 ? Root.Of(excess, 0, top, 1e-12) : 0;
        if (isEndless)
            return (lower, null);
        var step = Bound * (error ?? 0.25);
        for (var (inside, tries) = (top, 0); tries < Strides; tries++, step *= 1.5)
        {
            if (excess(inside + step) > 0)
                return (lower, Root.Of(excess, inside, inside + step, 1e-12));
            inside += step;
        }
        return (lower, null);
    }
}
