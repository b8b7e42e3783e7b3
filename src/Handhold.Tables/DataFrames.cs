using System.Globalization;
using Microsoft.Data.Analysis;

namespace Handhold.Tables;

/// <summary>Judged frames, answers and curve bands as data frames, and judged frames back.</summary>
/// <remarks>
/// Numbers are double precision and keep every digit; what was not recorded, or does not exist, is a null, never a number. Answers and bands go one way:
/// they come back by asking the curve, or its saved fit.
/// </remarks>
public static class DataFrames
{
    /// <summary>A row a cell: <c>exposure_s</c>, <c>frames</c>, <c>keepers</c>, <c>unjudged</c>, <c>kept_twice</c>, <c>kept_once</c> and <c>kept_never</c> where frames were judged twice, and the conditions recorded.</summary>
    /// <param name="table">The frames.</param>
    public static DataFrame ToDataFrame(this FrameTable table)
    {
        ArgumentNullException.ThrowIfNull(table);
        FrameBuilder rows = new();
        foreach (var cell in table)
        {
            rows.Add([
                ("exposure_s", cell.Exposure.Seconds),
                ("frames", cell.Frames),
                ("keepers", cell.Keepers),
                ("unjudged", cell.Unjudged),
                .. Looks(cell.SecondLooks),
                .. FrameBuilder.Recorded(cell.Conditions),
            ]);
        }

        return rows.Finish();
    }

    /// <summary>A row a frame: <c>exposure_s</c>, <c>keeper</c> (null when not judged), <c>grade</c>, <c>second_verdict</c> where there is one, and the conditions recorded.</summary>
    /// <param name="frames">The frames.</param>
    public static DataFrame ToDataFrame(this IEnumerable<ShotFrame> frames)
    {
        ArgumentNullException.ThrowIfNull(frames);
        FrameBuilder rows = new();
        foreach (var frame in frames)
        {
            rows.Add([
                ("exposure_s", frame.Exposure.Seconds),
                ("keeper", frame.Verdict == Verdict.NotJudged ? (bool?)null : frame.Verdict == Verdict.Keeper),
                ("grade", frame.Grade),
                .. frame.SecondVerdict == Verdict.NotJudged
                    ? Array.Empty<(string, object?)>()
                    : [("second_verdict", frame.SecondVerdict == Verdict.Keeper)],
                .. FrameBuilder.Recorded(frame.Conditions),
            ]);
        }

        return rows.Finish();
    }

    /// <summary>A row an answer: what told its curve apart, what was asked and what was found; columns that an answer does not have are null.</summary>
    /// <param name="answers">Answers of any kinds, in their order.</param>
    public static DataFrame ToDataFrame(this IEnumerable<Answer> answers)
    {
        ArgumentNullException.ThrowIfNull(answers);
        FrameBuilder rows = new();
        foreach (var answer in answers)
        {
            rows.Add([
                .. answer.Curve.Key.Values.Select(v => (v.Key, (object?)v.Value)),
                .. AnswerColumns.Of(answer),
                ("within_tested", answer.WithinTested),
                ("status", answer.Statuses.IsEmpty ? null : string.Join(' ', answer.Statuses.Select(s => s.Code).Distinct())),
            ]);
        }

        return rows.Finish();
    }

    /// <summary>A row a point: <c>log2_seconds</c>, <c>exposure_s</c>, <c>lower</c>, <c>median</c>, <c>upper</c>.</summary>
    /// <param name="band">The band.</param>
    public static DataFrame ToDataFrame(this CurveBand band)
    {
        ArgumentNullException.ThrowIfNull(band);
        FrameBuilder rows = new();
        foreach (var (i, x) in band.Log2Seconds.Index())
        {
            rows.Add([
                ("log2_seconds", x),
                ("exposure_s", ShutterSpeed.FromLog2Seconds(x).Seconds),
                ("lower", band.Lower[i]),
                ("median", band.Median[i]),
                ("upper", band.Upper[i]),
            ]);
        }

        return rows.Finish();
    }

    /// <summary>Judged frames of a data frame whose columns are named as those of a table; it is read and checked as a file is.</summary>
    /// <param name="frame">The data frame; nulls are what was not recorded.</param>
    /// <param name="options">Threshold of grades and limits.</param>
    /// <param name="cancellation">Stops the work.</param>
    /// <exception cref="TableException">The data frame is wrong: up to 20 errors with line (1 is the names of the columns), column, value and remedy.</exception>
    public static FrameTable ToFrameTable(this DataFrame frame, TableOptions? options = null, CancellationToken cancellation = default)
    {
        ArgumentNullException.ThrowIfNull(frame);
        using StringWriter text = new(CultureInfo.InvariantCulture);
        text.WriteLine(string.Join(',', frame.Columns.Select(c => QuoteMender.Quoted(c.Name))));
        for (var row = 0L; row < frame.Rows.Count; row++)
        {
            text.WriteLine(string.Join(',', frame.Columns.Select(c => Cell(c[row]))));
        }

        using StringReader reader = new(text.ToString());
        return TableReader.Read(reader, "the data frame", options, cancellation: cancellation);
    }

    private static (string, object?)[] Looks(SecondLooks looks) =>
        looks.Frames == 0 ? [] : [("kept_twice", looks.KeptTwice), ("kept_once", looks.KeptOnce), ("kept_never", looks.KeptNever)];

    private static string Cell(object? value) =>
        value switch
        {
            null => "",
            double number => number.ToString("R", CultureInfo.InvariantCulture),
            bool yes => yes ? "true" : "false",
            string label => QuoteMender.Quoted(SpreadsheetText.Neutralise(label)),
            IFormattable other => QuoteMender.Quoted(other.ToString(null, CultureInfo.InvariantCulture)),
            _ => QuoteMender.Quoted(value.ToString() ?? ""),
        };
}
