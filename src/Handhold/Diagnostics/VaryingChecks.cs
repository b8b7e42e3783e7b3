using System.Collections.Immutable;
using Handhold.Curves;
using Handhold.Fitting;
using Handhold.Randomness;

namespace Handhold.Diagnostics;

/// <summary>Cells left out of a posterior in which levels vary, by reweighting its points and the draws of the levels beside them.</summary>
/// <remarks>A cell is one level's of each grouping, on one day: its own weights are those of the points times those of these levels' draws.</remarks>
internal static class VaryingChecks
{
    /// <param name="curve">The curve.</param>
    /// <param name="varying">Its posterior.</param>
    /// <param name="rate">Rate of the exposure whose dependence on each cell is found.</param>
    /// <param name="named">Whose exposure it is: of the levels that these conditions name, or of a typical one.</param>
    /// <param name="under">Where the terms stand.</param>
    /// <param name="seed">Seed of the residuals' chance.</param>
    internal static (double?[] Fitted, ImmutableArray<CellCheck> Cells) Of(
        KeeperCurve curve,
        VaryingPosterior varying,
        double rate,
        Conditions named,
        Conditions under,
        int seed
    )
    {
        var (data, model, days) = (curve.Data, curve.Model, curve.Data.Days);
        var levels = varying.LevelsOf(named);
        var rule = VaryingDensity.Rule(model.Luck, TermObservations.From(varying.Moved, data.Cells, model.Luck).LargestBurst);
        LeftOut left = new(Exposures(), Seed.From(seed).Stream(1));
        var kept = data.Speeds.ToDictionary(s => s.Exposure, _ => 0.0);
        var checks = new List<CellCheck>();
        foreach (var path in data.Cells.GroupBy(c => string.Join(',', Known(c))))
            Check(Known(path.First()), [.. path.GroupBy(c => TermObservations.Unit(c, model.Luck)).Select(Unit)]);
        var places = data.Cells.Index().ToDictionary(p => p.Item, p => p.Index);
        return ([.. data.Speeds.Select(s => (double?)(kept[s.Exposure] / s.Frames))], [.. checks.OrderBy(c => places[c.Cells[0]])]);

        VaryingUnit Unit(IEnumerable<FrameCell> cells) => new([.. cells], model, varying.Moved, rule);

        ImmutableArray<(int Grouping, int Level)> Known(FrameCell cell) =>
            [
                .. varying.LevelsOf(cell.Conditions),
                .. model.Luck == LuckKind.None
                    ? []
                    : new[] { (varying.Days, days.IndexOf((cell.Conditions.Photographer, cell.Conditions.Session))) },
            ];

        double[] Exposures()
        {
            var (setting, tables) = (varying.Moved.Read(under), new Dictionary<double, BurstCurve>());
            return
            [
                .. varying
                    .Curves(levels, [], varying.Weights(levels))
                    .Select(draw => TermPosterior.AskedExposure(draw, setting, rate, tables)),
            ];
        }

        void Check(ImmutableArray<(int Grouping, int Level)> known, ImmutableArray<VaryingUnit> units)
        {
            var weights = varying.Weights([.. known.Union(levels)]);
            var draws = varying.Curves(known, [], weights);
            foreach (var unit in units)
            {
                for (var c = 0; c < unit.Cells.Length; c++)
                    kept[unit.Cells[c].Exposure] += unit.Cells[c].Frames * draws.Select((d, k) => weights[k] * unit.Rate(d, c)).Sum();
                checks.Add(left.Check(unit.Cells, weights, Array.ConvertAll(draws, unit.Log), k => unit.Count(draws[k])));
            }
        }
    }
}
