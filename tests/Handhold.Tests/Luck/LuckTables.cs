using Handhold.Tests.Estimators;

namespace Handhold.Tests.Luck;

/// <summary>Published overdispersed tables, each row a burst.</summary>
internal static class LuckTables
{
    internal static KeeperModel Normal { get; } = PublishedTables.Likelihood with { Luck = LuckKind.Normal, Each = [] };

    internal static KeeperModel Beta { get; } = Normal with { Luck = LuckKind.BetaBinomial };

    /// <summary>The model and the table of a case.</summary>
    internal static KeeperCurve Fit(string name, KeeperModel model) =>
        name switch
        {
            "seeds" => (model with { Terms = ["extract", "seed"], Products = [new("seed", "extract")] }).Fit(Table(name)).Only,
            "litters" => (model with { Terms = ["group"] }).Fit(Table(name)).Only,
            "herds" => (model with { Terms = ["period"] }).Fit(Herds("factor.csv")).Only,
            _ => model.Fit(Herds("numeric.csv")).Only,
        };

    internal static FrameTable Table(string name) => PublishedTables.Table("burst-luck", name + ".csv");

    private static FrameTable Herds(string file) =>
        [
            .. PublishedTables
                .Table("cbpp", file)
                .Select(cell =>
                    cell with
                    {
                        Conditions = cell.Conditions with { Burst = cell.Conditions.Photographer, Photographer = null },
                    }
                ),
        ];
}
