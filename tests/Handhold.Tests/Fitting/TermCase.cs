using System.Collections.Immutable;
using System.Globalization;
using System.Text.Json;

namespace Handhold.Tests.Fitting;

/// <summary>One fit with terms whose posterior another program summed on a product grid: its table and model, and what is expected of each curve.</summary>
internal sealed class TermCase
{
    private const string Folder = "posterior-terms";
    private static readonly string[] Counts = ["exposure_s", "frames", "keepers"];
    private readonly JsonElement _case;

    private TermCase(JsonElement expected) => _case = expected;

    internal static ImmutableArray<TermCase> All { get; } =
    [
        .. JsonDocument
            .Parse(File.ReadAllText(GoldenFolder.PathOf(Folder, "expected.json")))
            .RootElement.GetProperty("cases")
            .EnumerateArray()
            .Select(c => new TermCase(c)),
    ];

    internal string Name => _case.GetProperty("name").GetString()!;

    internal double LogEvidence => _case.GetProperty("logEvidence").GetDouble();

    internal FrameTable Table =>
        [
            .. GoldenFolder
                .Rows(Folder, _case.GetProperty("table").GetString()!)
                .Select(row => new FrameCell(
                    ShutterSpeed.FromSeconds(row.Number("exposure_s")),
                    (int)row.Number("frames"),
                    (int)row.Number("keepers")
                )
                {
                    Conditions = Under(row),
                }),
        ];

    internal KeeperModel Model
    {
        get
        {
            var model = _case.GetProperty("model");
            var ceiling = model.GetProperty("ceiling").GetString()!;
            return KeeperModel.Default with
            {
                Ceiling = ceiling == "estimated" ? Ceiling.Estimated : Ceiling.Fixed(double.Parse(ceiling, CultureInfo.InvariantCulture)),
                Luck = model.GetProperty("luck").GetString() == "none" ? LuckKind.None : LuckKind.Normal,
                Terms = model.TryGetProperty("terms", out var terms) ? [.. terms.EnumerateArray().Select(t => t.GetString()!)] : [],
                Products = model.TryGetProperty("products", out var products)
                    ? [.. products.EnumerateArray().Select(p => new TermProduct(p[0].GetString()!, p[1].GetString()!))]
                    : [],
            };
        }
    }

    internal FittedCurves Fit() => Model.Fit(Table, cancellation: TestContext.Current.CancellationToken);

    /// <summary>What is expected of each curve, beside the curve.</summary>
    internal IEnumerable<(JsonElement Expected, KeeperCurve Curve)> In(FittedCurves fit) =>
        _case.TryGetProperty("curves", out var curves)
            ? curves
                .EnumerateArray()
                .Select(c => (c, fit.Single(f => f.Key["setup"] == c.GetProperty("key").GetProperty("setup").GetString())))
            : [(_case, fit.Only)];

    internal static Conditions Under(JsonElement stated) =>
        Under(
            stated
                .EnumerateObject()
                .ToDictionary(p => p.Name, p => p.Value.ValueKind == JsonValueKind.String ? p.Value.GetString()! : p.Value.GetRawText())
        );

    private static Conditions Under(IReadOnlyDictionary<string, string> row) =>
        row.Where(cell => !Counts.Contains(cell.Key)).Aggregate(Conditions.None, (all, cell) => all.With(cell.Key, cell.Value));
}
