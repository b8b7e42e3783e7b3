using Handhold.Kernels;

namespace Handhold.Fitting;

internal sealed partial class TermDensity
{
    /// <summary>The law of the frames called keepers among frames of the same settings and sessions, at a point.</summary>
    internal CountLaw Count(ReadOnlySpan<double> z, TermObservations frames)
    {
        Span<double> effects = stackalloc double[_moved.Effects.Length];
        var point = Called(Read(z, effects));
        var room = TermCurves.Room(_data.Settings, _burst);
        TermCurves curves = new(point, effects, _data.Settings, _burst, room <= Stacked ? stackalloc double[room] : new double[room]);
        var sum = CountLaw.Nothing;
        for (var s = 0; s < frames.Sessions.Length; s++)
        {
            var (luck, last, law) = (Session(z, point, s), (TermBurst?)null, CountLaw.Nothing);
            foreach (var burst in frames.Sessions[s].Bursts)
            {
                if (last is null || !burst.IsShotLike(last))
                    (last, law) = (burst, curves.Count(burst.Cells, luck));
                sum = sum.Plus(law);
            }

            foreach (var cell in frames.Sessions[s].Afresh)
            {
                var (keep, miss) = curves.Afresh(cell, luck);
                sum = sum.Plus(CountLaw.Binomial(cell.Frames, keep, miss));
            }
        }

        return sum;
    }
}
