namespace Handhold.Simulation;

/// <summary>Chances of keepers from a shoot whose frames are independent once the luck of the day and of each grip is known.</summary>
/// <remarks>
/// The day's luck, one draw for all frames, and the grips' luck, one draw a burst, are integrated out by the trapezoidal rule over the
/// normal densities, whose error falls exponentially with the number of steps; given the luck, bursts are binomial and independent.
/// </remarks>
/// <param name="Frame">P(keeper) and P(reject) of one frame by its luck in stops, neither by subtraction.</param>
/// <param name="SessionLuck">Standard deviation of a day's shift, stops.</param>
/// <param name="BurstLuck">Standard deviation of a burst's shift, stops.</param>
/// <param name="Width">Stops of luck over which the odds of a keeper grow e-fold, about.</param>
internal sealed record ShootChance(Func<double, (double Keeper, double Reject)> Frame, double SessionLuck, double BurstLuck, double Width)
{
    /// <summary>Chance of at least so many keepers.</summary>
    internal double Of(int keepers, int frames, int? burstsOf)
    {
        if (keepers == 0 || keepers > frames)
        {
            return keepers == 0 ? 1 : 0;
        }
        if (burstsOf is null || burstsOf >= frames)
        {
            var spread = double.Hypot(SessionLuck, BurstLuck);
            return 1 - Average(spread, frames, keepers, (luck, counts) => Burst(luck, frames, counts)).Sum();
        }
        var (full, rest) = Math.DivRem(frames, burstsOf.Value);
        return 1
            - Average(
                    SessionLuck,
                    frames,
                    keepers,
                    (day, counts) =>
                    {
                        var one = Average(BurstLuck, burstsOf.Value, keepers, (grip, c) => Burst(day + grip, burstsOf.Value, c));
                        counts.Clear();
                        counts[0] = 1;
                        for (var burst = 0; burst < full; burst++)
                        {
                            Add(one, counts);
                        }
                        if (rest > 0)
                        {
                            Add(Average(BurstLuck, rest, keepers, (grip, c) => Burst(day + grip, rest, c)), counts);
                        }
                    }
                )
                .Sum();
    }

    private delegate void CountsGiven(double luck, Span<double> counts);

    /// <summary>P(0 keepers), ... P(<paramref name="below"/> - 1 keepers), averaged over luck ~ normal(0, spread).</summary>
    private double[] Average(double spread, int frames, int below, CountsGiven given)
    {
        var (average, counts) = (new double[below], new double[below]);
        if (spread == 0)
        {
            given(0, average);
            return average;
        }
        // The counts change with luck over a few width / sqrt(frames): step well below that, in standard deviations of luck.
        const double Reach = 9;
        var steps = (int)Math.Ceiling(Reach / Math.Min(0.4, Width / (spread * Math.Max(4, Math.Sqrt(frames)))));
        var step = Reach / steps;
        for (var i = -steps; i <= steps; i++)
        {
            var z = i * step;
            given(spread * z, counts);
            var weight = step * Math.Exp(-z * z / 2) / Math.Sqrt(2 * Math.PI);
            for (var k = 0; k < below; k++)
            {
                average[k] += weight * counts[k];
            }
        }
        return average;
    }

    /// <summary>Binomial probabilities of 0, 1, ... keepers in a burst of known luck.</summary>
    private void Burst(double luck, int frames, Span<double> counts)
    {
        var (keeper, reject) = Frame(luck);
        var (logKeeper, logReject, logChoose) = (Math.Log(keeper), Math.Log(reject), 0.0);
        for (var k = 0; k < counts.Length; k++)
        {
            counts[k] = k > frames ? 0 : Math.Exp(logChoose + (k > 0 ? k * logKeeper : 0) + (k < frames ? (frames - k) * logReject : 0));
            logChoose += Math.Log(Math.Max(1, frames - k)) - Math.Log(k + 1);
        }
    }

    /// <summary>Convolves, in place, the counts so far with those of one burst more.</summary>
    private static void Add(ReadOnlySpan<double> burst, Span<double> counts)
    {
        for (var k = counts.Length - 1; k >= 0; k--)
        {
            var sum = 0.0;
            for (var j = 0; j <= k; j++)
            {
                sum += burst[j] * counts[k - j];
            }
            counts[k] = sum;
        }
    }
}
