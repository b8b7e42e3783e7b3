using System.Collections.Immutable;
using Handhold.Kernels;
using Handhold.Models;

namespace Handhold.Fitting;

/// <summary>The curves of every setting at one point, and what they give to frames. A burst's luck is integrated by a Gauss-Hermite rule.</summary>
internal readonly ref struct TermCurves
{
    internal const double Vanishing = 1e-280; // products of chances below this have lost digits
    private readonly TermPoint _point;
    private readonly GaussRule _burst;
    private readonly Span<double> _halfPoints;
    private readonly Span<double> _steepness;
    private readonly Span<double> _odds; // settings × nodes: what a burst's luck does to the odds of a reject

    /// <param name="point">The point.</param>
    /// <param name="effects">Its effects.</param>
    /// <param name="settings">The settings.</param>
    /// <param name="burst">The rule.</param>
    /// <param name="room">Memory, as much as <see cref="Room"/> says.</param>
    internal TermCurves(TermPoint point, ReadOnlySpan<double> effects, ImmutableArray<Setting> settings, GaussRule burst, Span<double> room)
    {
        (_point, _burst) = (point, burst);
        _halfPoints = room[..settings.Length];
        _steepness = room.Slice(settings.Length, settings.Length);
        _odds = room[(2 * settings.Length)..];
        for (var i = 0; i < settings.Length; i++)
        {
            _halfPoints[i] = settings[i].HalfPoint(point.Tau0, effects);
            _steepness[i] = Math.Exp(point.LogSteepness + settings[i].Steeper(effects));
            for (var k = 0; k < burst.Nodes.Length; k++)
                _odds[i * burst.Nodes.Length + k] = Math.Exp(-_steepness[i] * point.BurstSd * burst.Nodes[k]);
        }
    }

    /// <summary>Numbers to keep.</summary>
    internal static int Room(ImmutableArray<Setting> settings, GaussRule burst) => settings.Length * (2 + burst.Nodes.Length);

    /// <summary>Log-likelihood (Bernoulli scale) of a burst.</summary>
    internal double Log(ImmutableArray<TermCell> cells, double luck)
    {
        Span<double> products = stackalloc double[_burst.Nodes.Length];
        _burst.Weights.CopyTo(products);
        foreach (var cell in cells)
        {
            var odds = Odds(cell, luck);
            for (var k = 0; k < products.Length; k++)
            {
                var (keep, miss) = Chances(odds * OfLuck(cell, k));
                products[k] *= Elementary.Power(keep, cell.Keepers) * Elementary.Power(miss, cell.Frames - cell.Keepers);
            }
        }

        var sum = 0.0;
        foreach (var product in products)
            sum += product;
        return sum > Vanishing ? Math.Log(sum) : LogOfSmall(cells, luck);
    }

    /// <summary>Log-likelihood (Bernoulli scale) of frames each with a luck of its own.</summary>
    internal double LogAfresh(TermCell cell, double luck)
    {
        var (keep, miss) = Afresh(cell, luck);
        return Log(cell.Keepers, keep) + Log(cell.Frames - cell.Keepers, miss);
    }

    /// <summary>Chances of a frame that is held afresh.</summary>
    internal (double Keep, double Miss) Afresh(TermCell cell, double luck)
    {
        var odds = Odds(cell, luck);
        if (_point.BurstSd == 0)
            return Chances(odds);
        var (keep, miss) = (0.0, 0.0);
        for (var k = 0; k < _burst.Nodes.Length; k++)
        {
            var (p, q) = Chances(odds * OfLuck(cell, k));
            keep += _burst.Weights[k] * p;
            miss += _burst.Weights[k] * q;
        }

        return (keep, miss);
    }

    /// <summary>The law of the keepers of a burst.</summary>
    internal CountLaw Count(ImmutableArray<TermCell> cells, double luck)
    {
        var laws = new CountLaw[_burst.Nodes.Length];
        for (var k = 0; k < laws.Length; k++)
        {
            laws[k] = CountLaw.Nothing;
            foreach (var cell in cells)
            {
                var (keep, miss) = Chances(Odds(cell, luck) * OfLuck(cell, k));
                laws[k] = laws[k].Plus(CountLaw.Binomial(cell.Frames, keep, miss));
            }
        }

        return CountLaw.Mixed(_burst.Weights.AsSpan(), laws);
    }

    /// <summary>By logarithms, for large bursts and for points far from the data.</summary>
    private double LogOfSmall(ImmutableArray<TermCell> cells, double luck)
    {
        var logs = new double[_burst.Nodes.Length];
        for (var k = 0; k < logs.Length; k++)
        {
            logs[k] = Math.Log(_burst.Weights[k]);
            foreach (var cell in cells)
            {
                var (keep, miss) = Elementary.Capped(Eta(cell, luck + _point.BurstSd * _burst.Nodes[k]), _point.Ceiling, _point.Floor);
                logs[k] += Log(cell.Keepers, keep) + Log(cell.Frames - cell.Keepers, miss);
            }
        }

        return Elementary.LogSum(logs);
    }

    private double Eta(TermCell cell, double luck) => _steepness[cell.Setting] * (_halfPoints[cell.Setting] + luck - cell.Exposure);

    /// <summary>Odds of a reject, but for floor, ceiling and a burst's luck.</summary>
    private double Odds(TermCell cell, double luck) => Math.Exp(-Eta(cell, luck));

    private double OfLuck(TermCell cell, int node) => _odds[cell.Setting * _burst.Nodes.Length + node];

    private (double Keep, double Miss) Chances(double odds)
    {
        var (keep, miss) = Elementary.AgainstOdds(odds);
        var span = _point.Ceiling - _point.Floor;
        return (_point.Floor + span * keep, 1 - _point.Ceiling + span * miss);
    }

    private static double Log(int count, double chance) => count == 0 ? 0 : count * Math.Log(chance);
}
