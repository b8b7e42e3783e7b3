using System.Collections.Immutable;

namespace Handhold.Cli;

/// <summary>Reports for people: a sentence an answer, then what it rests on.</summary>
internal static class Say
{
    public static void Fit(Desk desk, FittedCurves curves, bool check)
    {
        var page = OutputPage(desk);
        foreach (var curve in curves)
            FitReport.Write(page, curve, check);
        Cautions.Write(page, curves, []);
    }

    public static void Answers(Desk desk, ImmutableArray<Answer> answers, AnswerOptions options)
    {
        var page = OutputPage(desk);
        var varies = answers[0].Curve.Model.Varies;
        string[] about = [Plain.Whose(options.Whose, varies), Plain.Stated(options.Conditions, options.Whose, varies)];
        about = [.. about.Where(text => text.Length > 0)];
        if (about.Length > 0)
            page.Text($"For {string.Join(", ", about)}:");
        foreach (var asked in answers.GroupBy(answer => answer.Curve))
            AnswerReport.Write(page, asked.Key, [.. asked]);
        Cautions.Write(page, answers.Select(a => a.Curve).Distinct(), answers);
    }

    public static void Differences(Desk desk, ImmutableArray<StopsDifference> differences, string between, AnswerOptions options)
    {
        var page = OutputPage(desk);
        foreach (var difference in differences)
            DifferenceReport.Write(page, difference, between, options);
        Cautions.Write(page, differences.SelectMany(d => new[] { d.A, d.B }).Distinct(), []);
    }

    public static void Calculated(Desk desk, KnownRateAnswer answer)
    {
        var page = OutputPage(desk);
        page.Text(answer.Sentence);
        CurveNotes.Mind(page, answer.Statuses);
        page.Text("This takes the rate as known to the last digit; a test of yours knows it less well, and needs more frames.");
    }

    public static void Files(Desk desk, IEnumerable<string> files)
    {
        foreach (var file in files)
            OutputPage(desk).Text($"Wrote {file}");
    }

    public static void Errors(Desk desk, ImmutableArray<Complaint> complaints)
    {
        var page = new Page(desk.Error, width: null);
        foreach (var complaint in complaints)
            page.Text($"handhold: {Place(complaint)}{complaint.Message} {complaint.Remedy}".TrimEnd());
    }

    public static Page OutputPage(Desk desk) => new(desk.Output, desk.Width);

    private static string Place(Complaint complaint)
    {
        string?[] parts =
        [
            complaint.Line is null ? null : complaint.File,
            complaint.Line is { } line ? FormattableString.Invariant($"line {line}") : null,
            complaint.Column is { } column ? $"column {column}" : null,
            complaint.Line is not null && complaint.Value is { Length: > 0 } value ? $"`{value}`" : null,
        ];
        var place = string.Join(", ", parts.OfType<string>());
        return place.Length == 0 ? "" : place + ": ";
    }
}
