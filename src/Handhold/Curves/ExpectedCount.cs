namespace Handhold.Curves;

/// <summary>The keepers at one speed against what all other speeds lead to expect.</summary>
/// <param name="Seen">What was seen.</param>
/// <param name="Rate">Mean expected rate.</param>
/// <param name="Fewer">Probability of fewer keepers than were seen.</param>
/// <param name="Exactly">Probability of as many.</param>
/// <param name="More">Probability of more.</param>
internal sealed record ExpectedCount(SpeedCount Seen, double Rate, double Fewer, double Exactly, double More)
{
    /// <summary>Chance of a count as far out, to either side.</summary>
    internal double Chance => Math.Min(1, 2 * (Math.Min(Fewer, More) + Exactly));
}
