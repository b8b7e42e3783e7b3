using System.Collections.Immutable;
using System.Globalization;
using System.Text.Json;

namespace Handhold.Tests.Fitting;

/// <summary>One fit whose posterior another program integrated: its options and table, and what is expected of each curve.</summary>
internal sealed class BruteForceCase
{
    private static readonly (string Folder, string File)[] Files =
    [
        ("posterior-brute-force", "expected.json"),
        ("two-curves-shared-ceiling", "expected.json"),
        ("bliss", "posterior.json"),
        ("budworm", "posterior.json"),
    ];

    private readonly string _folder;
    private readonly JsonElement _case;

    private BruteForceCase(string folder, JsonElement expected) => (_folder, _case) = (folder, expected);

    internal static ImmutableArray<BruteForceCase> All { get; } =
    [
        .. Files.SelectMany(f =>
            JsonDocument
                .Parse(File.ReadAllText(GoldenFolder.PathOf(f.Folder, f.File)))
                .RootElement.GetProperty("cases")
                .EnumerateArray()
                .Select(c => new BruteForceCase(f.Folder, c))
        ),
    ];

    internal string Name => _case.GetProperty("name").GetString()!;

    internal double LogEvidence => _case.GetProperty("logEvidence").GetDouble();

    /// <summary>What is expected of each curve, beside the curve.</summary>
    internal IEnumerable<(JsonElement Expected, KeeperCurve Curve)> In(FittedCurves fit)
    {
        if (!_case.TryGetProperty("curves", out var curves))
            return [(_case, fit.Only)];
        Assert.Equal(curves.GetArrayLength(), fit.Count);
        return curves
            .EnumerateArray()
            .Select(c => (c, fit.Single(f => f.Key["setup"] == c.GetProperty("key").GetProperty("setup").GetString())));
    }

    internal FittedCurves Fit()
    {
        var options = _case.GetProperty("options");
        var ceiling = options.GetProperty("ceiling").GetString()!;
        var floor = options.GetProperty("floor").GetString()!;
        var (tau, steepness) = (options.GetProperty("tauPrior"), options.GetProperty("steepnessPrior"));
        KeeperModel model = new()
        {
            Ceiling = ceiling switch
            {
                "estimated" => Ceiling.Estimated,
                "one" => Ceiling.One,
                _ => Ceiling.Fixed(double.Parse(ceiling, CultureInfo.InvariantCulture)),
            },
            Floor = floor == "estimated" ? Floor.Estimated : Floor.Fixed(double.Parse(floor, CultureInfo.InvariantCulture)),
            Luck = options.GetProperty("luck").GetString() == "none" ? LuckKind.None : LuckKind.Normal,
            Priors = Priors.Default with
            {
                HalfPoint = new(tau.GetProperty("mean").GetDouble(), tau.GetProperty("sd").GetDouble()),
                Steepness = new(steepness.GetProperty("median").GetDouble(), steepness.GetProperty("logSd").GetDouble()),
            },
        };
        var rows = GoldenFolder.Rows(_folder, _case.GetProperty("table").GetString()!);
        return model.Fit(FrameTable.Create([.. rows.Select(Cell)]), cancellation: TestContext.Current.CancellationToken);
    }

    private static FrameCell Cell(IReadOnlyDictionary<string, string> row) =>
        new(ShutterSpeed.FromSeconds(row.Number("exposure_s")), (int)row.Number("frames"), (int)row.Number("keepers"))
        {
            Conditions = new()
            {
                Setup = Label(row, "setup"),
                Session = Label(row, "session"),
                Burst = Label(row, "burst"),
            },
        };

    private static string? Label(IReadOnlyDictionary<string, string> row, string column) =>
        row.TryGetValue(column, out var label) && label.Length > 0 ? label : null;
}
