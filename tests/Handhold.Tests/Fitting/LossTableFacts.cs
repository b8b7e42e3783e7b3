using Handhold.Fitting;

namespace Handhold.Tests.Fitting;

public class LossTableFacts
{
    [Theory]
    [InlineData(1.2, 38.8, 1e-8)]
    [InlineData(1, 49, 1e-8)]
    [InlineData(60, 900, 1e-8)]
    [InlineData(0.5, 0.5, 1e-6)]
    [InlineData(0.3, 4000, 1e-6)]
    public void A_table_says_what_the_quantile_says(double a, double b, double relative)
    {
        BetaPrior prior = new(a, b);
        LossTable table = new(prior);
        for (var z = -8.4; z < 8.5; z += 0.0371)
        {
            var loss = LossTable.Quantile(prior, z).X;
            Assert.Equal(1, table.At(z) / loss, relative);
        }
    }
}
