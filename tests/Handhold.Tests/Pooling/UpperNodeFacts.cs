using Handhold.Fitting;

namespace Handhold.Tests.Pooling;

/// <summary>Nodes above the finest levels, against the moments of a normal distribution: McNamee and Stenger (1967), Numerische Mathematik 10, 327-344.</summary>
public class UpperNodeFacts
{
    [Theory]
    [InlineData(1, 5)]
    [InlineData(2, 9)]
    [InlineData(3, 19)]
    [InlineData(4, 25)]
    public void Polynomials_up_to_the_fifth_degree_are_integrated_exactly(int directions, int nodes)
    {
        var upper = IntegralRule.Usual.Above![directions].ToArray();
        Assert.Equal(nodes, upper.Length);
        foreach (var powers in Powers(directions).Where(p => p.Sum() <= 5))
            Assert.Equal(
                powers.Aggregate(1.0, (product, p) => product * Moment(p)),
                upper.Sum(n =>
                    Math.Exp(n.LogWeight - n.At.Sum(x => x * x) / 2)
                    * n.At.Zip(powers, (x, p) => Math.Pow(x, p)).Aggregate(1.0, (a, b) => a * b)
                ),
                1e-12
            );
    }

    /// <summary>Opposite draws integrate odd polynomials exactly; squares within four standard errors of 32 pairs, √(2 / 32) each.</summary>
    [Theory]
    [InlineData(5)]
    [InlineData(9)]
    public void More_directions_have_pairs_of_opposite_normal_draws(int directions)
    {
        var pairs = IntegralRule.More.Above![directions].ToArray();
        Assert.Equal(64, pairs.Length);
        Assert.Equal(1, Mean(_ => 1), 1e-12);
        for (var i = 0; i < directions; i++)
        {
            Assert.Equal(0, Mean(at => at[i] * at[(i + 1) % directions] * at[(i + 2) % directions]), 1e-12);
            Assert.Equal(1, Mean(at => at[i] * at[i]), 4 * Math.Sqrt(2 / 32.0));
        }

        double Mean(Func<IReadOnlyList<double>, double> of) => pairs.Sum(n => Math.Exp(n.LogWeight - n.At.Sum(x => x * x) / 2) * of(n.At));
    }

    private static IEnumerable<int[]> Powers(int directions) =>
        directions == 0
            ?
            [
                [],
            ]
            : Powers(directions - 1).SelectMany(rest => Enumerable.Range(0, 6), (rest, p) => (int[])[.. rest, p]);

    private static double Moment(int power) =>
        power switch
        {
            0 or 2 => 1,
            4 => 3,
            _ => 0,
        };
}
