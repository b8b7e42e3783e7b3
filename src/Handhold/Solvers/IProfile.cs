using System.Collections.Immutable;

namespace Handhold.Solvers;

/// <summary>What an objective loses when a contrast of the coefficients is held.</summary>
internal interface IProfile
{
    /// <summary>The normal quantile that the square root of the loss is held against.</summary>
    double Bound { get; }

    /// <summary>The maximum; of a likelihood without one the bias-reduced, which lies inside.</summary>
    BinomialEstimate Estimate { get; }

    /// <summary>Whether a fit with a contrast held came out above the maximum, which has been climbed again from there: what was found before is void.</summary>
    bool Moved { get; set; }

    /// <summary>Of a likelihood without maximum, the directions in which it never falls.</summary>
    Cone? Cone { get; }

    /// <summary>What the limit's rates give for a contrast that stays finite.</summary>
    double Limit(ImmutableArray<double> contrast);

    /// <summary>A first step away from the estimate.</summary>
    double Step(ImmutableArray<double> contrast);

    /// <summary>√(twice the objective lost by holding a contrast) - <see cref="Bound"/>: negative inside.</summary>
    double Excess(ImmutableArray<double> contrast, double value);
}
