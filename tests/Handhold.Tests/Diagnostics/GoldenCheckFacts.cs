using System.Text.Json;
using Handhold.Diagnostics;
using Handhold.Kernels;
using Handhold.Randomness;

namespace Handhold.Tests.Diagnostics;

public class GoldenCheckFacts
{
    public static TheoryData<int> Refits => [.. Enumerable.Range(0, 4)];

    [Theory]
    [MemberData(nameof(Refits))]
    public void Cells_left_out_of_exact_fits_do_what_fitting_again_in_another_program_says(int index)
    {
        var expected = Read("diagnostics-refit").GetProperty("cases")[index];
        var model = KeeperModel.Default with
        {
            Estimator = Enum.Parse<Estimator>(expected.GetProperty("estimator").GetString()!),
            Link = Enum.Parse<Link>(expected.GetProperty("link").GetString()!, ignoreCase: true),
            Terms = ["sex"],
        };
        FrameTable table =
        [
            .. GoldenFolder
                .Rows("budworm", "table.csv")
                .Select(row => new FrameCell(
                    ShutterSpeed.FromSeconds(row.Number("exposure_s")),
                    (int)row.Number("frames"),
                    (int)row.Number("keepers")
                )
                {
                    Conditions = Conditions.None.With("sex", row["sex"]),
                }),
        ];
        var checks = model.Fit(table).Only.Check(rate: 0.8, Conditions.None.With("sex", "F"), seed: 7);
        var chance = Seed.From(7).Stream(1);
        int[] rows = [.. checks.Cells.Select(c => table.ToList().IndexOf(c.Cells.Single()))];
        double[] Golden(string what) => [.. rows.Select(row => expected.GetProperty(what)[row].GetDouble())];
        double[] residuals =
        [
            .. Golden("fewer").Zip(Golden("nomore"), (fewer, upTo) => Normal.Quantile(fewer + chance.Uniform() * (upTo - fewer))),
        ];
        Agree(Golden("leverage"), checks.Cells.Select(c => c.Leverage));
        Agree(Golden("influence"), checks.Cells.Select(c => c.Influence?.Value));
        Agree(Golden("logPredictive"), checks.Cells.Select(c => c.LogPredictiveDensity));
        Agree(residuals, checks.Cells.Select(c => c.Residual));
        foreach (var (speed, i) in checks.Speeds.Select((s, i) => (s, i)))
            Assert.Equal(new[] { i, i + 6 }.Average(row => expected.GetProperty("fitted")[row].GetDouble()), speed.Fitted!.Value, 1e-6);
    }

    [Fact]
    public void Speeds_left_out_of_a_posterior_do_what_sums_over_a_grid_say()
    {
        var model = KeeperModel.Default with
        {
            Luck = LuckKind.None,
            Ceiling = Ceiling.One,
            Priors = Priors.Default with { HalfPoint = new(-6, 3) },
        };
        FrameTable table =
        [
            .. GoldenFolder
                .Rows("diagnostics-grid", "table.csv")
                .Select(row => new FrameCell(ShutterSpeed.Parse(row["exposure"]), (int)row.Number("frames"), (int)row.Number("keepers"))),
        ];
        var checks = model.Fit(table).Only.Check(rate: 0.8, seed: 7);
        var chance = Seed.From(7).Stream(1);
        foreach (var (golden, i) in Read("diagnostics-grid").GetProperty("speeds").EnumerateArray().Select((g, i) => (g, i)))
        {
            double Golden(string what) => golden.GetProperty(what).GetDouble();
            var (speed, cell) = (checks.Speeds[i], checks.Cells.Single(c => c.Cells[0].Exposure == checks.Speeds[i].Seen.Exposure));
            var residual = Normal.Quantile(Golden("fewer") + chance.Uniform() * Golden("exactly"));
            Assert.True(cell.IsReliable);
            Assert.Equal(Golden("fitted"), speed.Fitted!.Value, 0.002);
            Assert.Equal(Golden("expected"), speed.Expected!.Value, 0.005);
            Assert.Equal(Golden("leverage"), cell.Leverage!.Value, 0.02);
            Assert.Equal(Golden("influence"), cell.Influence!.Value.Value, 0.03);
            Assert.Equal(Golden("logPredictive"), cell.LogPredictiveDensity!.Value, 0.02);
            Assert.Equal(residual, cell.Residual!.Value, 0.02);
        }
    }

    private static void Agree(double[] expected, IEnumerable<double?> actual)
    {
        foreach (var (golden, value) in expected.Zip(actual, (g, v) => (g, v!.Value)))
            Assert.Equal(golden, value, 1e-6);
    }

    private static JsonElement Read(string name) =>
        JsonDocument.Parse(File.ReadAllText(GoldenFolder.PathOf(name, "expected.json"))).RootElement;
}
