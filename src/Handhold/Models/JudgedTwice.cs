using Handhold.Kernels;

namespace Handhold;

/// <summary>What frames judged twice tell of the judge.</summary>
/// <remarks>
/// Both looks err alike and independently: a frame that is a keeper with probability P is called one twice with probability P s² + (1 - P) f², once with
/// 2 (P s (1 - s) + (1 - P) f (1 - f)) and never with P (1 - s)² + (1 - P)(1 - f)², s the sensitivity and f = 1 - specificity. P is any at each shutter speed,
/// uniform on 0 to 1; s and the specificity are Beta(9, 1) above 0.5 beforehand, with which two looks agree in about 8 of 10 frames. Source: Hui and Walter (1980),
/// Biometrics 36, 167-171, for two tests without a truth. A second look that knows the first, or shares its mistakes, makes the judge seem better. Checked by golden/judged-twice.
/// </remarks>
public sealed class JudgedTwice
{
    private const int Cells = 64;
    private const int Rates = 48;
    private const double Believed = 8; // the power of the prior's density
    private const double Least = 0.5;

    private JudgedTwice(SecondLooks looks, CredibleInterval sensitivity, CredibleInterval specificity, Judging judging) =>
        (Looks, Sensitivity, Specificity, Judging) = (looks, sensitivity, specificity, judging);

    private static GaussRule Rate { get; } = GaussRule.Legendre(Rates);

    /// <summary>The frames that it rests on.</summary>
    public SecondLooks Looks { get; }

    /// <summary>Where the share of keepers that are called keepers lies.</summary>
    public CredibleInterval Sensitivity { get; }

    /// <summary>Where the share of rejects that are called rejects lies.</summary>
    public CredibleInterval Specificity { get; }

    /// <summary>Means, for a model: it takes them as known.</summary>
    public Judging Judging { get; }

    /// <summary>What the frames of a table tell; null where none was judged twice.</summary>
    /// <param name="table">Judged frames.</param>
    /// <param name="level">Probability inside the intervals, above 0 and below 1.</param>
    /// <exception cref="ArgumentOutOfRangeException">The level is not between 0 and 1.</exception>
    public static JudgedTwice? Of(FrameTable table, double level = 0.95)
    {
        ArgumentNullException.ThrowIfNull(table);
        if (!(level is > 0 and < 1))
            throw new ArgumentOutOfRangeException(nameof(level), level, "The level must lie between 0 and 1.");
        SecondLooks[] speeds =
        [
            .. table
                .GroupBy(c => c.Exposure, c => c.SecondLooks)
                .Select(g => g.Aggregate(SecondLooks.Add))
                .Where(looks => looks.Frames > 0),
        ];
        if (speeds.Length == 0)
            return null;

        var logs = new double[Cells, Cells];
        for (var i = 0; i < Cells; i++)
        for (var j = 0; j < Cells; j++)
            logs[i, j] = LogDensity(Middle(i), Middle(j), speeds);
        var top = logs.Cast<double>().Max();
        var (sensitivity, specificity) = (new double[Cells], new double[Cells]);
        for (var i = 0; i < Cells; i++)
        for (var j = 0; j < Cells; j++)
        {
            var mass = Math.Exp(logs[i, j] - top);
            sensitivity[i] += mass;
            specificity[j] += mass;
        }

        var looks = speeds.Aggregate(SecondLooks.Add);
        return new(
            looks,
            Within(sensitivity, level),
            Within(specificity, level),
            new()
            {
                Sensitivity = Mean(sensitivity),
                Specificity = Mean(specificity),
                FramesJudgedTwice = looks.Frames,
            }
        );
    }

    private static double LogDensity(double sensitivity, double specificity, SecondLooks[] speeds)
    {
        var wrong = 1 - specificity;
        var sum = Believed * Math.Log(sensitivity * specificity);
        Span<double> logs = stackalloc double[Rates];
        foreach (var looks in speeds)
        {
            for (var q = 0; q < Rates; q++)
            {
                var rate = (1 + Rate.Nodes[q]) / 2;
                logs[q] =
                    Math.Log(Rate.Weights[q])
                    + Times(looks.KeptTwice, rate * sensitivity * sensitivity + (1 - rate) * wrong * wrong)
                    + Times(looks.KeptOnce, 2 * (rate * sensitivity * (1 - sensitivity) + (1 - rate) * wrong * specificity))
                    + Times(looks.KeptNever, rate * (1 - sensitivity) * (1 - sensitivity) + (1 - rate) * specificity * specificity);
            }

            sum += Elementary.LogSum(logs);
        }

        return sum;
    }

    private static double Times(int count, double chance) => count == 0 ? 0 : count * Math.Log(chance);

    private static double Middle(int cell) => Least + (1 - Least) * (cell + 0.5) / Cells;

    private static double Mean(double[] masses) => masses.Select((mass, i) => mass * Middle(i)).Sum() / masses.Sum();

    private static CredibleInterval Within(double[] masses, double level)
    {
        return new(Quantile((1 - level) / 2), Quantile((1 + level) / 2), level);

        double Quantile(double p)
        {
            var (wanted, i) = (p * masses.Sum(), 0);
            for (; i < Cells - 1 && wanted > masses[i]; i++)
                wanted -= masses[i];
            return Least + (1 - Least) * (i + Math.Min(1, wanted / masses[i])) / Cells;
        }
    }
}
