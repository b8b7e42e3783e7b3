using Handhold.Curves;
using Handhold.Prediction;

namespace Handhold;

/// <summary>The burst luck that an answer assumed, and where it came from.</summary>
public sealed class LuckUsed
{
    private readonly Lazy<double?> _correlation;

    private LuckUsed(string kind, double value, string unit, string origin, Func<double?> correlation) =>
        (Kind, Value, Unit, Origin, _correlation) = (kind, value, unit, origin, new(correlation));

    /// <summary><c>normal</c>, <c>beta-binomial</c> or <c>none</c>.</summary>
    public string Kind { get; }

    /// <summary>Its size: the sd of normal luck (a posterior's median), or the correlation of two frames of a burst; 0 for none.</summary>
    public double Value { get; }

    /// <summary>What <see cref="Value"/> is in: <c>stops</c>, <c>correlation</c>, or <c>link</c> where a fit at one speed knows no stops.</summary>
    public string Unit { get; }

    /// <summary><c>estimated</c>, <c>assumed</c> or <c>given</c>.</summary>
    public string Origin { get; }

    /// <summary>Correlation of two frames of one burst at the speed asked, about the rate of their day; null where no rate was given. Computed when first read.</summary>
    public double? Correlation => _correlation.Value;

    /// <summary>The luck of a curve, and what it means at an exposure.</summary>
    internal static LuckUsed Of(Question question, double exposure)
    {
        var curve = question.Curve;
        if (question.Law is ILineLaw law)
            return curve.Linear!.Luck is not { Estimate: { } luck, Name: var name } ? None("assumed")
                : name == "rho" ? new("beta-binomial", luck, "correlation", "estimated", Correlation)
                : law.InStops(luck) is { } stops ? new("normal", stops, "stops", "estimated", Correlation)
                : new("normal", luck, "link", "estimated", Correlation);
        return curve.Model.Luck == LuckKind.None
            ? None("given")
            : new(
                "normal",
                curve.Parameters.First(p => p.Name == "burstLuck").Median,
                "stops",
                curve.Data.Bursts > 0 ? "estimated" : "assumed",
                Correlation
            );

        static LuckUsed None(string origin) => new("none", 0, "stops", origin, () => 0);

        double? Correlation() =>
            !question.Declined(exposure) && question.Law.BurstCorrelation(exposure) is var rho && double.IsFinite(rho) ? rho : null;
    }
}
