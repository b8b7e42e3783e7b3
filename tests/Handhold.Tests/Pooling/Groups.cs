using System.Collections.Concurrent;
using Handhold.Tests.Estimators;

namespace Handhold.Tests.Pooling;

/// <summary>Invented photographers with setups, fitted together; each structure once.</summary>
internal static class Groups
{
    private static readonly ConcurrentDictionary<string, Lazy<KeeperCurve>> s_fits = new();

    internal static FrameTable Table { get; } = PublishedTables.Table("grouped-simulated", "cells.csv");

    internal static Varying Nested { get; } = new("setup") { Within = ["photographer"] };

    /// <summary>Invented: photographers with two setups each, four frames at each of four speeds; the later a photographer, the fewer he keeps.</summary>
    internal static FrameTable Club(int photographers) =>
        [
            .. from level in Enumerable.Range(0, 2 * photographers)
            from speed in new[] { 125, 60, 30, 15 }
            select new FrameCell(ShutterSpeed.OneOver(speed), 4, Math.Min(4, speed / (20 + 10 * (level / 2))))
            {
                Conditions = new()
                {
                    Photographer = FormattableString.Invariant($"p{level / 2}"),
                    Setup = FormattableString.Invariant($"s{level % 2}"),
                },
            },
        ];

    internal static KeeperCurve Curve(string structure) => s_fits.GetOrAdd(structure, name => new(() => Model(name).Fit(Table).Only)).Value;

    internal static LinearFit Fit(string structure) => Curve(structure).Linear!;

    internal static KeeperModel Model(string structure) =>
        PublishedTables.Likelihood with
        {
            Each = [],
            Varies = structure switch
            {
                "nested" => [new("photographer"), Nested],
                "nestedBoth" => [new("photographer", VaryingPart.Both), Nested],
                "uncorrelated" => [new("photographer", VaryingPart.BothUncorrelated), Nested],
                "slope" => [new("photographer", VaryingPart.Exposure)],
                "crossed" => [new("photographer", VaryingPart.Both), new("setup")],
                _ => throw new ArgumentException($"No structure is called {structure}."),
            },
        };
}
