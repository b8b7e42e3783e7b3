using System.Collections.Immutable;
using ScottPlot;

namespace Handhold.Plots;

internal sealed partial class CurveDrawing
{
    /// <summary>The row of counts, then the others, the most useful first: earlier ones choose their spots first.</summary>
    private void DrawLabels() =>
        _plot.Add.Plottable(
            new DirectLabels(
                [
                    .. _scene.Observed.Select(CountLabel),
                    UntestedLabel(_shown.Min, _scene.Fastest),
                    UntestedLabel(_scene.Slowest, _shown.Max),
                    TargetLabel(),
                    CurveLabel(),
                    .. CeilingLabel(),
                ],
                Obstacles()
            )
        );

    private DirectLabel CountLabel(ObservedRate observed) =>
        new(
            _lettering.Of($"{observed.Keepers} of {observed.Frames}", Lettering.Small, Palette.Ink),
            [new(observed.Log2Seconds, Top, Alignment.UpperCenter)],
            Room(Top)
        );

    private DirectLabel UntestedLabel(double from, double to) =>
        new(
            _lettering.Of("not tested", Lettering.Small, Palette.Quiet),
            [new((from + to) / 2, Top, Alignment.UpperCenter), new(from, Top, Alignment.UpperLeft), new(to, Top, Alignment.UpperRight)],
            new CoordinateRect(from, to, Bottom, Top)
        );

    private DirectLabel TargetLabel()
    {
        var (rate, exposure) = (_scene.Target.Rate, _scene.Target.Log2Seconds);
        var ends = _scene.Target.Pieces.SelectMany(p => new[] { p.Lower, p.Upper }).OfType<double>().Where(_shown.Contains).ToArray();
        var low = ends.Prepend(exposure ?? _shown.Max).Min();
        var high = ends.Prepend(exposure ?? _shown.Min).Max();
        return new DirectLabel(
            _lettering.Of(CurveWords.Target(_scene.Target, _scene.Level, _scene.Marks), Lettering.Body, Palette.Target, bold: true),
            [
                new(high, rate, Alignment.LowerLeft, 6),
                new(_shown.Max, rate, Alignment.LowerRight, 6),
                new(low, rate, Alignment.UpperRight, 6),
                new(_shown.Min, rate, Alignment.UpperLeft, 6),
                new(high, rate, Alignment.UpperLeft, 6),
                new(low, rate, Alignment.LowerRight, 6),
                new(_shown.Min, rate, Alignment.LowerLeft, 6),
                new(_shown.Max, rate, Alignment.UpperRight, 6),
                new(exposure ?? _shown.Max, exposure is null ? rate : Bottom, Alignment.LowerRight, 6),
                new(exposure ?? _shown.Min, exposure is null ? rate : Bottom, Alignment.LowerLeft, 6),
                .. Anywhere().OrderBy(spot => Math.Abs(spot.Rate - rate)),
            ],
            Room(Row)
        );
    }

    /// <summary>Right of the band's upper edge, or left of its lower edge, where it passes some rate; else below or above a flat band.</summary>
    private DirectLabel CurveLabel()
    {
        var spots = ImmutableArray.CreateBuilder<LabelSpot>();
        foreach (var rate in new[] { 0.7, 0.6, 0.5, 0.8, 0.4, 0.9, 0.3, 0.2 })
        {
            spots.AddRange(Falls(_scene.Upper, rate).Select(x => new LabelSpot(x, rate, Alignment.LowerLeft, 3)));
            spots.AddRange(Falls(_scene.Lower, rate).Select(x => new LabelSpot(x, rate, Alignment.UpperRight, 3)));
        }

        var middle = _scene.Log2Seconds.Length / 2;
        spots.Add(new(_scene.Log2Seconds[middle], _scene.Lower[middle], Alignment.UpperCenter));
        spots.Add(new(_scene.Log2Seconds[middle], _scene.Upper[middle], Alignment.LowerCenter));
        spots.AddRange(Anywhere());
        return new DirectLabel(
            _lettering.Of($"{_scene.LineName} and {CurveWords.Percent(_scene.Level)} band", Lettering.Body, Palette.Curve),
            spots.ToImmutable(),
            Room(Row)
        );
    }

    /// <summary>Spots all over the plot: the last resort of a text that must not be left out.</summary>
    private IEnumerable<LabelSpot> Anywhere() =>
        from tenth in Enumerable.Range(1, 9)
        from step in Enumerable.Range(0, 21)
        select new LabelSpot(_shown.Min + (step * _shown.Span / 20), 1 - (tenth / 10.0), Alignment.MiddleCenter);

    /// <summary>The exposures at which rates fall past a rate.</summary>
    private IEnumerable<double> Falls(ImmutableArray<double> rates, double rate) =>
        Enumerable.Range(1, rates.Length - 1).Where(i => rates[i - 1] > rate && rates[i] <= rate).Select(i => _scene.Log2Seconds[i]);

    private IEnumerable<DirectLabel> CeilingLabel()
    {
        if (_scene.Ceiling is { } ceiling)
        {
            yield return new DirectLabel(
                _lettering.Of($"ceiling {CurveWords.Percent(ceiling)}", Lettering.Small, Palette.Curve),
                [
                    new(_shown.Max, ceiling, Alignment.UpperRight, 3),
                    new(_shown.Max, ceiling, Alignment.LowerRight, 3),
                    new(_shown.Min, ceiling, Alignment.UpperLeft, 3),
                ],
                Room(Row)
            );
        }
    }

    private static CoordinateRect Room(double top) => new(-Far, Far, Bottom, top);

    /// <summary>What texts keep clear of: curve, target, ceiling, dots and their intervals.</summary>
    private ImmutableArray<Obstacle> Obstacles()
    {
        var target = _scene.Target;
        var obstacles = ImmutableArray.CreateBuilder<Obstacle>();
        for (var i = 1; i < _scene.Median.Length; i++)
        {
            obstacles.Add(Box(_scene.Log2Seconds[i - 1], _scene.Log2Seconds[i], _scene.Median[i - 1], _scene.Median[i], 1));
        }

        foreach (var line in new[] { target.Rate, _scene.Ceiling ?? target.Rate })
        {
            obstacles.Add(Box(-Far, Far, line, line, 1));
        }

        obstacles.AddRange(target.Pieces.Select(p => Box(p.Lower ?? -Far, p.Upper ?? Far, target.Rate, target.Rate, 3)));
        if (target.Log2Seconds is { } exposure)
        {
            obstacles.Add(Box(exposure, exposure, Bottom, target.Rate, 1));
            obstacles.Add(Box(exposure, exposure, target.Rate, target.Rate, TargetSize / 2));
        }

        foreach (var o in _scene.Observed)
        {
            obstacles.Add(Box(o.Log2Seconds, o.Log2Seconds, o.Lower, o.Upper, 1));
            obstacles.Add(Box(o.Log2Seconds, o.Log2Seconds, o.Rate, o.Rate, DotSize(o.Frames) / 2));
        }

        return obstacles.ToImmutable();
    }

    private static Obstacle Box(double x1, double x2, double y1, double y2, float margin) =>
        new(new CoordinateRect(x1, x2, Math.Min(y1, y2), Math.Max(y1, y2)), margin);
}
