namespace Handhold.Tests.Kernels;

/// <summary>Compares a kernel with the high-precision values of golden/special-functions.</summary>
internal static class SpecialValues
{
    /// <summary>Every value of the function agrees within a relative tolerance, or an absolute one where the value is smaller than <paramref name="floor"/>.</summary>
    internal static void Agree(string function, double tolerance, Func<double[], double> ours, double floor = 0)
    {
        var rows = GoldenFolder.Rows("special-functions", "values.csv").Where(row => row["function"] == function).ToList();
        Assert.NotEmpty(rows);
        foreach (var row in rows)
        {
            double[] arguments =
            [
                .. new[] { "a", "b", "c", "d" }.Where(column => row[column].Length > 0).Select(column => row.Number(column)),
            ];
            var (expected, got) = (row.Number("value"), ours(arguments));
            var scale = Math.Max(floor, Math.Abs(expected));
            var error = Math.Abs(got - expected) / (scale == 0 ? 1 : scale);
            Assert.True(
                error <= tolerance,
                FormattableString.Invariant($"{function}({string.Join("; ", arguments)}) is {expected:R}, got {got:R}: error {error:E2}.")
            );
        }
    }
}
