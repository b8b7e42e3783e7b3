using System.Collections.Immutable;
using System.CommandLine;
using Handhold.Diagnostics;
using Handhold.Tables;

namespace Handhold.Cli;

internal sealed partial class FitOptions
{
    public TableOptions ReadingOf(ParseResult given) =>
        TableOptions.Default with
        {
            KeeperFromGrade = given.ReadValue(_grade, Reading.Count),
        };

    /// <summary>The table as the options want it: the burst from the column that --burst names, every column of the split there.</summary>
    public FrameTable Prepare(ParseResult given, FrameTable table, KeeperModel model)
    {
        if (BurstColumn(given) is { } burst)
        {
            RefuseAbsent(table, _burst.Name, burst);
            table = [.. table.Select(cell => cell with { Conditions = cell.Conditions with { Burst = cell.Conditions[burst] } })];
        }

        foreach (var column in model.Terms)
            RefuseAbsentTerm(table, column);
        foreach (var column in model.Varies.SelectMany(v => v.Within.Append(v.Column)).Distinct())
            RefuseAbsent(table, _vary.Name, column);
        foreach (var column in model.Each.Except(KeeperModel.Default.Each))
            RefuseAbsent(table, _each.Name, column);
        if (!model.Each.Contains("criterion") && table.Select(cell => cell.Conditions.Criterion).Distinct().Count() > 1)
            throw new UsageException(
                $"These frames were judged by several criteria ({Criteria(table)}), which no curve can mix.",
                "Add criterion to --each, or leave the others out of the table."
            );
        return table;
    }

    /// <summary>A posterior learns the judge from frames judged twice, unless told.</summary>
    public KeeperModel Judged(ParseResult given, KeeperModel model, FrameTable table) =>
        model.Estimator == Estimator.Posterior
        && !given.Has(_sensitivity)
        && !given.Has(_specificity)
        && JudgedTwice.Of(table, model.Level) is { } twice
            ? model with
            {
                Judging = twice.Judging,
            }
            : model;

    /// <summary>The JSON of a fit, with or without its counts; checks that cost as much as the fit only where asked for.</summary>
    public string Text(ParseResult given, FittedCurves curves, bool check = false) =>
        SavedFit.Report(
            curves,
            withCells: !given.GetValue(_withoutCells),
            (json, curve) =>
            {
                if (!check && CurveNotes.IsCheckDear(curve))
                    return;
                json.WritePropertyName("checks");
                ChecksJson.Write(json, curve.Check());
            }
        );

    public void Save(ParseResult given, FittedCurves curves)
    {
        if (given.GetValue(_save) is { } file)
            WholeFile.WriteText(file, Text(given, curves) + "\n");
    }

    /// <summary>The columns that split the table; one that names bursts does not split unless it is asked to.</summary>
    private ImmutableArray<string> Splitting(ParseResult given, KeeperModel model, string? also)
    {
        ImmutableArray<string> each =
            given.Has(_together) ? []
            : given.Read(_each, Reading.Columns) is { } columns ? [.. columns]
            : [.. model.Each.Where(column => column != BurstColumn(given))];
        if (each.FirstOrDefault(model.Terms.Contains) is { } both)
            throw Reading.Refused(
                _each.Name,
                both,
                "is a term as well.",
                $"A column either splits the table or is a {_term.Name}: choose one."
            );
        if (each.FirstOrDefault(c => model.Varies.Any(v => v.Column == c || v.Within.Contains(c))) is { } varies)
            throw Reading.Refused(
                _each.Name,
                varies,
                "is among the levels that vary.",
                $"A column either splits the table or tells levels apart ({_vary.Name}, --within): choose one."
            );
        if (also is not null && model.Varies.Any(v => v.Column == also || v.Within.Contains(also)))
            return each;
        return also is null || IsTerm(given, model, also) || each.Contains(also) ? each : each.Add(also);
    }

    /// <summary>Whether a column is compared within one curve: named as a term, the labels of a built-in one, or those of one that varies.</summary>
    private bool IsTerm(ParseResult given, KeeperModel model, string column) =>
        model.Varies.Any(v => v.Term?.Split('=')[0] == TermOf(column)) || IsNamed(given, model, column);

    private static string TermOf(string column) =>
        column switch
        {
            "stabiliser_mode" => "stabiliser",
            "subject_motion" => "subjectMotion",
            _ => column,
        };

    private bool IsNamed(ParseResult given, KeeperModel model, string column) =>
        model.Terms.IsEmpty
            ? model.Estimator == Estimator.Posterior && !given.GetValue(_noTerms) && column is "stabiliser_mode" or "subject_motion"
            : model.Terms.Contains(column);

    private string? BurstColumn(ParseResult given) => given.GetValue(_burst) is { } column and not "none" ? column : null;

    private static void RefuseAbsent(FrameTable table, string option, string column)
    {
        if (table.All(cell => cell.Conditions[column] is null))
            throw Reading.Refused(option, column, "is no column of the table, or an empty one.", "Name a column as the header spells it.");
    }

    private static string Criteria(FrameTable table) =>
        string.Join(
            ", ",
            table.Select(cell => cell.Conditions.Criterion?.Name ?? "none recorded").Distinct().Order(StringComparer.Ordinal)
        );
}
