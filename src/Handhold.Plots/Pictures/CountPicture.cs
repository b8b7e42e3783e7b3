using System.Collections.Immutable;
using System.Globalization;
using ScottPlot;

namespace Handhold.Plots;

/// <summary>Turns the keepers to expect into a plot.</summary>
internal static class CountPicture
{
    private const double Width = 0.36;

    private static readonly ImmutableArray<int> s_steps = [1, 2, 5, 10, 20];
    private static readonly ImmutableArray<double> s_shares = [0.01, 0.02, 0.05, 0.1];

    public static Plot Draw(CountScene scene)
    {
        Figure figure = new(scene.Palette);
        var most = scene.OneBurst.Concat(scene.Bursts).DefaultIfEmpty(0.5).Max();
        var frames = Math.Max(0, scene.OneBurst.Length - 1);
        var step = s_steps.First(s => frames / s <= 12);
        var percent = s_shares.FirstOrDefault(s => most / s <= 6, 0.2);
        figure.Frame(
            new AxisLimits(-0.8, frames + 0.8, 0, most * 1.15),
            (
                "Keepers",
                Figure.Ticks(
                    Enumerable
                        .Range(0, 1 + (frames / step))
                        .Select(i => ((double)(i * step), (i * step).ToString(CultureInfo.InvariantCulture)))
                )
            ),
            (
                "Probability",
                Figure.Ticks(
                    Enumerable.Range(0, 1 + (int)(most * 1.15 / percent)).Select(i => (i * percent, CurveWords.Percent(i * percent)))
                )
            )
        );
        Bars(figure, 0, scene.OneBurst, "one burst", -Width / 2);
        Bars(figure, 1, scene.Bursts, scene.BurstsName, Width / 2);
        figure.Words(scene.Words);
        return figure.Finish();
    }

    private static void Bars(Figure figure, int series, IReadOnlyList<double> probabilities, string name, double shift)
    {
        var color = figure.Palette.Series[series];
        foreach (var (keepers, probability) in probabilities.Index())
        {
            figure.Bar(keepers + shift, Width, probability, color, hollow: series == 1);
        }

        // Above the bar where the two differ most in this one's favour it is clearest which is meant; any tall bar will do.
        figure.Say(
            name,
            color,
            probabilities
                .Index()
                .OrderByDescending(p => p.Item)
                .SelectMany(p =>
                    new[]
                    {
                        new LabelSpot(p.Index + shift, p.Item, series == 0 ? Alignment.LowerRight : Alignment.LowerLeft, 3),
                        new LabelSpot(p.Index + shift, p.Item, Alignment.LowerCenter, 3),
                    }
                ),
            bold: true
        );
    }
}
