using Handhold.Kernels;

namespace Handhold.Fitting;

internal sealed partial class TermDensity
{
    /// <summary>The law of the frames called keepers among frames of the same settings and sessions, at a point.</summary>
    internal CountLaw Count(ReadOnlySpan<double> z, TermObservations frames)
    {
        Span<double> effects = stackalloc double[_moved.Effects.Length];
        Span<double> halfPoints = stackalloc double[_data.Settings.Length];
        Span<double> steepness = stackalloc double[_data.Settings.Length];
        var point = Called(Read(z, effects));
        Curves(point, effects, halfPoints, steepness);
        var sum = CountLaw.Nothing;
        for (var s = 0; s < frames.Sessions.Length; s++)
        {
            var luck = Session(z, point, s);
            foreach (var burst in frames.Sessions[s].Bursts)
                sum = sum.Plus(InBurst(burst, point, luck, halfPoints, steepness));
            foreach (var cell in frames.Sessions[s].Afresh)
            {
                var (keep, miss) = AfreshChances(cell, point, luck, halfPoints, steepness);
                sum = sum.Plus(CountLaw.Binomial(cell.Frames, keep, miss));
            }
        }

        return sum;
    }

    private CountLaw InBurst(TermBurst burst, TermPoint point, double luck, ReadOnlySpan<double> halfPoints, ReadOnlySpan<double> steepness)
    {
        var laws = new CountLaw[_burst.Nodes.Length];
        for (var k = 0; k < laws.Length; k++)
        {
            laws[k] = CountLaw.Nothing;
            foreach (var cell in burst.Cells)
            {
                var (keep, miss) = Chances(point, Eta(cell, luck + point.BurstSd * _burst.Nodes[k], halfPoints, steepness));
                laws[k] = laws[k].Plus(CountLaw.Binomial(cell.Frames, keep, miss));
            }
        }

        return CountLaw.Mixed(_burst.Weights.AsSpan(), laws);
    }
}
