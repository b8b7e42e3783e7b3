using Handhold.Curves;
using Handhold.Prediction;

namespace Handhold;

/// <summary>The burst luck that an answer assumed, and where it came from.</summary>
public sealed class LuckUsed
{
    private LuckUsed(string kind, double value, string unit, string origin, double? correlation) =>
        (Kind, Value, Unit, Origin, Correlation) = (kind, value, unit, origin, correlation);

    /// <summary><c>normal</c>, <c>beta-binomial</c> or <c>none</c>.</summary>
    public string Kind { get; }

    /// <summary>Its size: the sd of normal luck (a posterior's median), or the correlation of two frames of a burst; 0 for none.</summary>
    public double Value { get; }

    /// <summary>What <see cref="Value"/> is in: <c>stops</c>, <c>correlation</c>, or <c>link</c> where a fit at one speed knows no stops.</summary>
    public string Unit { get; }

    /// <summary><c>estimated</c>, <c>assumed</c> or <c>given</c>.</summary>
    public string Origin { get; }

    /// <summary>Correlation of two frames of one burst at the speed asked, about the rate of their day; null where no rate was given.</summary>
    public double? Correlation { get; }

    /// <summary>The luck of a curve, and what it means at an exposure.</summary>
    internal static LuckUsed Of(Question question, double exposure)
    {
        var (curve, answered) = (question.Curve, !question.Declined(exposure));
        double? correlation =
            answered && question.Law.BurstCorrelation(exposure) is var rho && double.IsFinite(rho) ? Math.Max(0, rho) : null;
        if (question.Law is ProfileLaw law)
            return curve.Linear!.Luck is not { Estimate: { } luck, Name: var name } ? new("none", 0, "stops", "assumed", correlation)
                : name == "rho" ? new("beta-binomial", luck, "correlation", "estimated", correlation)
                : law.InStops(luck) is { } stops ? new("normal", stops, "stops", "estimated", correlation)
                : new("normal", luck, "link", "estimated", correlation);
        return curve.Model.Luck == LuckKind.None
            ? new("none", 0, "stops", "given", correlation)
            : new(
                "normal",
                curve.Parameters.First(p => p.Name == "burstLuck").Median,
                "stops",
                curve.Data.Bursts > 0 ? "estimated" : "assumed",
                correlation
            );
    }
}
