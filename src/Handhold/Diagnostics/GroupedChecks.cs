using System.Collections.Immutable;
using Handhold.Curves;
using Handhold.Kernels;

namespace Handhold.Diagnostics;

/// <summary>Rates fitted to the levels of a curve, speed by speed; no cell is left out, since the levels' effects are.</summary>
internal static class GroupedChecks
{
    internal static (double?[] Fitted, ImmutableArray<CellCheck> Cells) Of(KeeperCurve curve, GroupedCurve grouped)
    {
        var fitted = curve
            .Data.Cells.GroupBy(cell => cell.Exposure)
            .ToDictionary(g => g.Key, g => g.Sum(cell => cell.Frames * Rate(cell)) / g.Sum(cell => cell.Frames));
        return ([.. curve.Data.Speeds.Select(speed => (double?)fitted[speed.Exposure])], []);

        double Rate(FrameCell cell) =>
            Links
                .At(curve.Model.Link, grouped.Fit.Predictor(grouped.Layout.Design.Row(cell), grouped.LevelsOf(cell.Conditions).AsSpan()))
                .F;
    }
}
