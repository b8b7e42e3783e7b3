using System.Collections.Immutable;
using System.Text.Json;
using Handhold.Solvers;

namespace Handhold.Tests.Solvers;

/// <summary>Problems of the published tables, and the numbers expected of them.</summary>
internal static class Problems
{
    /// <summary>A case's table with an intercept and named columns, each a number worked out from a row.</summary>
    internal static BinomialProblem Table(
        string caseName,
        string file,
        params (string Name, Func<IReadOnlyDictionary<string, string>, double> Of)[] columns
    )
    {
        var rows = GoldenFolder.Rows(caseName, file);
        return new(
            ["(Intercept)", .. columns.Select(c => c.Name)],
            rows.SelectMany(row => columns.Select(c => c.Of(row)).Prepend(1)).ToArray(),
            rows.Select(row => (int)row.Number("frames")).ToArray(),
            rows.Select(row => (int)row.Number("keepers")).ToArray()
        );
    }

    internal static double Log2Exposure(IReadOnlyDictionary<string, string> row) => Math.Log2(row.Number("exposure_s"));

    internal static Func<IReadOnlyDictionary<string, string>, double> Is(string column, string level) =>
        row => row[column] == level ? 1 : 0;

    /// <summary>A line of intercept and one covariate.</summary>
    internal static BinomialProblem Line(double[] x, int[] frames, int[] keepers) =>
        new(["intercept", "x"], x.SelectMany(v => new[] { 1, v }).ToArray(), frames, keepers);

    internal static JsonElement Expected(string caseName, params string[] path) =>
        path.Aggregate(
            JsonDocument.Parse(File.ReadAllText(GoldenFolder.PathOf(caseName, "expected.json"))).RootElement,
            (element, name) => element.GetProperty(name)
        );

    internal static double At(this JsonElement element, params string[] path) =>
        path.Aggregate(element, (inner, name) => inner.GetProperty(name)).GetDouble();

    internal static void Near(double expected, double got, double relative) =>
        Assert.True(Math.Abs(got / expected - 1) < relative, $"{got:R} is not {expected:R}.");

    internal static ImmutableArray<double> Unit(this BinomialProblem problem, int column) =>
        [.. problem.Columns.Select((_, j) => j == column ? 1.0 : 0.0)];
}
