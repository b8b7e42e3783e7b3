using System.Collections.Immutable;
using System.CommandLine;

namespace Handhold.Cli;

/// <summary><c>handhold compare</c>: how many stops slower one side allows than the other.</summary>
internal static class CompareVerb
{
    public static Command Build(Desk desk)
    {
        var question = new Question("compare", "How many stops does one lens, grip or person allow over another?");
        var between = question.Add(
            new Option<string>("--between") { HelpName = "COLUMN", Description = "Column whose values are compared, such as setup." }
        );
        var rate = question.Add(Shared.Rate());
        return question.Runs(given =>
        {
            var column = given.GetValue(between) ?? throw Given.Missing(between.Name);
            var wanted = given.Need(rate, Reading.Share);
            var (curves, options) = question.Asked(given, desk, also: column);
            var differences = curves.All(c => Labels(c, column, options.Conditions).Length > 0)
                ? Waiting.ForEach(desk, "Comparing", curves, curve => Levels(curve, column, wanted, options))
                : Waiting.ForEach<(KeeperCurve A, KeeperCurve B), StopsDifference>(
                    desk,
                    "Comparing",
                    Sides(curves, column),
                    s => [s.B.SlowerThan(s.A, wanted, options)]
                );
            if (question.WantsJson(given))
                Json.Answers(desk, differences, (json, difference) => AnswerJson.Write(json, difference, column));
            else
                Say.Differences(desk, differences, column, options);
            return differences.All(d => d.Stops is not null) ? ExitCode.Done : ExitCode.NoAnswer;
        });
    }

    private static CurveTerm? Term(KeeperCurve curve, string column) =>
        curve.Key[column] is null ? curve.Terms.FirstOrDefault(t => t.Columns.Contains(column) && !t.Levels.IsEmpty) : null;

    /// <summary>The labels of a column that one curve holds: of a term, the reference first, or of levels that vary, within those that were set.</summary>
    private static ImmutableArray<string> Labels(KeeperCurve curve, string column, Conditions set) =>
        Term(curve, column) is { } term
            ? term.Levels
            :
            [
                .. curve
                    .Data.Cells.Where(c => curve.Model.Varies.Any(v => v.Column == column))
                    .Select(c => c.Conditions)
                    .Where(c => curve.Model.Varies.First(v => v.Column == column).Within.All(w => set[w] is null || set[w] == c[w]))
                    .Select(c => c[column]!)
                    .Distinct()
                    .Order(StringComparer.Ordinal),
            ];

    /// <summary>Every two labels of a column of one curve, the reference first.</summary>
    private static IEnumerable<StopsDifference> Levels(KeeperCurve curve, string column, double rate, AnswerOptions options)
    {
        var levels = Labels(curve, column, options.Conditions);
        return from b in Enumerable.Range(0, levels.Length)
            from a in Enumerable.Range(0, b)
            select curve.SlowerUnder(Conditions.None.With(column, levels[b]), Conditions.None.With(column, levels[a]), rate, options);
    }

    /// <summary>Every two values of the column among curves that agree in all else, in byte order.</summary>
    private static ImmutableArray<(KeeperCurve A, KeeperCurve B)> Sides(ImmutableArray<KeeperCurve> curves, string column)
    {
        if (curves.Any(c => c.Key[column] is null))
            throw new UsageException(
                $"--between {column}: the curves are not told apart by {column}.",
                "Name a column that splits them.",
                column
            );
        ImmutableArray<(KeeperCurve, KeeperCurve)> sides =
        [
            .. from alike in curves.GroupBy(c => string.Join('\n', c.Key.Values.Where(v => v.Key != column).Select(v => v.Value)))
            let ordered = alike.OrderBy(c => c.Key[column], StringComparer.Ordinal).ToArray()
            from b in Enumerable.Range(0, ordered.Length)
            from a in Enumerable.Range(0, b)
            select (ordered[a], ordered[b]),
        ];
        return sides.IsEmpty
            ? throw new UsageException(
                $"--between {column}: no two curves differ in {column} alone.",
                "Set what else tells them apart with --set, or split by this column alone with --each.",
                column
            )
            : sides;
    }
}
