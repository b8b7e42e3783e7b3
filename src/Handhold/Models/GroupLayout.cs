using System.Collections.Immutable;
using Handhold.Solvers;

namespace Handhold.Models;

/// <summary>The levels that vary, and what of the linear predictor varies by each.</summary>
internal sealed class GroupLayout
{
    private GroupLayout(
        DesignLayout design,
        ImmutableArray<Grouping> groupings,
        ImmutableArray<(int Grouping, ImmutableArray<int> Columns)> parts
    ) => (Design, Groupings, Parts) = (design, groupings, parts);

    internal DesignLayout Design { get; }

    internal ImmutableArray<Grouping> Groupings { get; }

    /// <summary>Effects in the order of the solver: of which grouping, on which columns.</summary>
    internal ImmutableArray<(int Grouping, ImmutableArray<int> Columns)> Parts { get; }

    /// <summary>The levels of a curve's frames.</summary>
    /// <exception cref="CellException">Frames lack a label, or nothing can be told of what is to vary.</exception>
    internal static GroupLayout Of(KeeperModel model, DesignLayout design, ImmutableArray<FrameCell> cells, string place)
    {
        ImmutableArray<Grouping> groupings = [.. model.Varies.Select(varying => Grouping.Of(varying, cells, place))];
        foreach (var grouping in groupings)
        {
            var column = grouping.Varying.Column;
            if (grouping.Varying.Part != VaryingPart.Intercept && !design.HasExposure)
                throw new CellException(
                    place,
                    $"all of its frames were shot at {cells[0].Exposure}, and the slope on exposure is to vary by {column}.",
                    "Let the intercept vary, or add frames at other speeds."
                );
            if (grouping.Varying.Term is { } term)
                CheckTerm(term, grouping, design, cells, place);
            if (cells.GroupBy(c => grouping.LevelOf(c.Conditions)).All(level => level.Sum(c => (long)c.Frames) == 1))
                throw new CellException(
                    place,
                    $"each {column} has one frame, so how {column}s differ cannot be told from chance.",
                    "Let a column vary whose labels have several frames."
                );
        }
        foreach (var (i, one) in groupings.Index())
        foreach (var other in groupings.Skip(i + 1))
            if (Columns(one).Intersect(Columns(other)).Any() && GoTogether(one, other))
                throw new CellException(
                    place,
                    $"each {one.Varying.Column} goes with one {other.Varying.Column} and the other way round, so what varies by which cannot be told.",
                    "Let one of the two vary, or add frames of another combination."
                );
        return new(design, groupings, [.. groupings.SelectMany((g, i) => ColumnsOf(g.Varying, design).Select(columns => (i, columns)))]);

        IEnumerable<int> Columns(Grouping grouping) => ColumnsOf(grouping.Varying, design).SelectMany(columns => columns);

        bool GoTogether(Grouping one, Grouping other) =>
            one.Levels.Length == other.Levels.Length
            && cells.Select(c => (one.LevelOf(c.Conditions), other.LevelOf(c.Conditions))).Distinct().Count() == one.Levels.Length;
    }

    /// <summary>A column that varies of which every level kept or lost all of its frames; null where there is none.</summary>
    internal string? AllAlike(ImmutableArray<FrameCell> cells) =>
        Groupings
            .FirstOrDefault(g =>
                cells
                    .GroupBy(c => g.LevelOf(c.Conditions))
                    .All(level => level.All(c => c.Keepers == 0) || level.All(c => c.Keepers == c.Frames))
            )
            ?.Varying.Column;

    /// <summary>The parts of some groupings.</summary>
    internal ImmutableArray<int> PartsOf(ImmutableArray<Grouping> groupings) =>
        [.. Enumerable.Range(0, Parts.Length).Where(part => groupings.Contains(Groupings[Parts[part].Grouping]))];

    /// <summary>The counts, equal rows of equal levels pooled, those of equal levels one after another.</summary>
    internal GroupedProblem Problem(ImmutableArray<FrameCell> cells, KeeperModel model)
    {
        int[][] levels = [.. Groupings.Select(g => cells.Select(c => g.LevelOf(c.Conditions)!.Value).ToArray())];
        int[] order =
        [
            .. levels
                .Skip(1)
                .Aggregate(Enumerable.Range(0, cells.Length).OrderBy(i => levels[0][i]), (sorted, of) => sorted.ThenBy(i => of[i])),
        ];
        levels = [.. levels.Select(of => order.Select(i => of[i]).ToArray())];
        var (rows, rowOf) = Design.Rows([.. order.Select(i => cells[i])], model).Pool(Kinds(levels));
        var first = new int[rows.Rows];
        for (var i = cells.Length - 1; i >= 0; i--)
            first[rowOf[i]] = i;
        return new(
            rows,
            [
                .. Parts.Select(part => new LevelEffects(
                    [.. first.Select(i => levels[part.Grouping][i])],
                    Groupings[part.Grouping].Levels.Length,
                    part.Columns
                )),
            ]
        );
    }

    // A number for each combination of levels.
    private static int[] Kinds(int[][] levels)
    {
        var kinds = levels[0];
        foreach (var others in levels.Skip(1))
        {
            Dictionary<(int, int), int> known = [];
            kinds = [.. kinds.Zip(others).Select(pair => known.TryGetValue(pair, out var kind) ? kind : known[pair] = known.Count)];
        }
        return kinds;
    }

    /// <summary>Refuses a term that the curve has not, or that no level was shot with and without.</summary>
    private static void CheckTerm(string term, Grouping grouping, DesignLayout design, ImmutableArray<FrameCell> cells, string place)
    {
        var (by, columns) = (grouping.Varying.Column, design.ColumnsOf(term));
        if (columns.IsEmpty)
            throw new CellException(
                place,
                $"{term} is to vary by {by}, and it is no term of it: {(design.Terms.IsEmpty ? "it has none" : $"it has {Listing.And(design.Terms.SelectMany(t => t.Columns))}")}.",
                $"Name a term of it, add this one (--term {term}), or let intercept or exposure vary."
            );
        var rows = cells.Select(c => (Level: grouping.LevelOf(c.Conditions), Row: design.Row(c))).ToLookup(c => c.Level, c => c.Row);
        foreach (var column in columns)
            if (rows.All(level => level.All(row => row[column] == level.First()[column])))
                throw new CellException(
                    place,
                    $"the frames of each {by} are alike in {design.Columns[column]}, so how its effect differs between {by}s cannot be told from how they differ themselves.",
                    "Let another term vary, or shoot with it and without it."
                );
    }

    private static ImmutableArray<ImmutableArray<int>> ColumnsOf(Varying varying, DesignLayout design) =>
        varying.Term is { } term ? [.. design.ColumnsOf(term).Select(column => ImmutableArray.Create(column))] : ColumnsOf(varying.Part);

    private static ImmutableArray<ImmutableArray<int>> ColumnsOf(VaryingPart part) =>
        part switch
        {
            VaryingPart.Exposure =>
            [
                [1],
            ],
            VaryingPart.Both =>
            [
                [0, 1],
            ],
            VaryingPart.BothUncorrelated =>
            [
                [0],
                [1],
            ],
            _ =>
            [
                [0],
            ],
        };
}
