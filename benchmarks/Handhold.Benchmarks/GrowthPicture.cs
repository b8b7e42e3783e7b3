using System.Globalization;
using ScottPlot;
using ScottPlot.TickGenerators;

namespace Handhold.Benchmarks;

/// <summary>Time against photographers on logarithmic axes, beside a line of proportion.</summary>
internal static class GrowthPicture
{
    internal static string AlternativeText(double exponent) =>
        FormattableString.Invariant(
            $"Time of a fit against its photographers, from 100 to 10 000, both on logarithmic axes: the points lie along a line of slope {exponent:F2}."
        );

    internal static void Save((double Photographers, double Time)[] points, double exponent)
    {
        using Plot plot = new();
        double[] x = [.. points.Select(p => Math.Log10(p.Photographers))];
        double[] y = [.. points.Select(p => Math.Log10(p.Time))];
        var proportion = plot.Add.Line(x[0], y[0], x[^1], y[0] + x[^1] - x[0]);
        (proportion.LinePattern, proportion.LineColor, proportion.LegendText) = (LinePattern.Dashed, Colors.Gray, "in proportion");
        var times = plot.Add.Scatter(x, y, Color.FromHex("#0b6e99"));
        (times.MarkerSize, times.LineWidth, times.LegendText) = (9, 2, "measured");
        plot.Title(FormattableString.Invariant($"Ten times the photographers take {Math.Pow(10, exponent):F1} times as long"));
        plot.Axes.Bottom.Label.Text = "photographers, 36 rows of 10 frames each";
        plot.Axes.Left.Label.Text = "time of all threads, ms";
        plot.Axes.Bottom.TickGenerator = Ticks(points.Select(p => p.Photographers));
        plot.Axes.Left.TickGenerator = Ticks([1, 10, 100, 1000, 10_000]);
        plot.ShowLegend(Alignment.UpperLeft);
        plot.SavePng(Path.Combine(Repository.Root, "docs", "pictures", "growth.png"), 800, 500);
    }

    private static NumericManual Ticks(IEnumerable<double> values)
    {
        double[] all = [.. values];
        return new([.. all.Select(Math.Log10)], [.. all.Select(v => v.ToString("#,0", CultureInfo.InvariantCulture).Replace(',', ' '))]);
    }
}
