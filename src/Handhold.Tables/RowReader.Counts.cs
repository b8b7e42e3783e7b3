using System.Globalization;

namespace Handhold.Tables;

internal sealed partial class RowReader
{
    private FrameCell? ReadCounts(in TableRow row, ShutterSpeed? exposure, Conditions conditions)
    {
        var frames = Count(row, _frames);
        var keepers = Count(row, _keepers);
        var unjudged = CountOrNone(row, _unjudged);
        var (twice, once, never) = (CountOrNone(row, _looks[0]), CountOrNone(row, _looks[1]), CountOrNone(row, _looks[2]));
        if (
            exposure is not { } speed
            || frames is null
            || keepers is null
            || unjudged is null
            || twice is null
            || once is null
            || never is null
        )
        {
            return null;
        }
        if (keepers > frames)
        {
            row.Wrong(
                _keepers,
                string.Create(CultureInfo.InvariantCulture, $"{keepers} keepers in {frames} frames is impossible."),
                "Count each frame once."
            );
            return null;
        }
        if (frames == 0 && unjudged == 0)
        {
            row.Wrong(_frames, "The cell holds no frames.", "Leave the row out, or count its frames.");
            return null;
        }
        return row.Try(
            null,
            () =>
                FrameTable.Create(
                    new FrameCell(speed, frames.Value, keepers.Value)
                    {
                        Unjudged = unjudged.Value,
                        SecondLooks = new(twice.Value, once.Value, never.Value),
                        Conditions = conditions,
                    }
                )[0],
            null
        );
    }

    private static int? CountOrNone(in TableRow row, int index) => index < 0 || row.IsBlank(index) ? 0 : Count(row, index);

    private static int? Count(in TableRow row, int index)
    {
        if (row.IsBlank(index))
        {
            row.Wrong(index, "The count is missing.", "Write it in every row, 0 for none.");
            return null;
        }
        if (row.Whole(index) is not < 0 and var count)
        {
            return count;
        }
        row.Wrong(index, "A count cannot be below 0.", "Write a whole number from 0 up.");
        return null;
    }

    private FrameCell? ReadFrame(in TableRow row, ShutterSpeed? exposure, Conditions conditions)
    {
        var verdict = _keeper < 0 ? Verdict.NotJudged : ReadVerdict(row, _keeper);
        var second = _second < 0 ? Verdict.NotJudged : ReadVerdict(row, _second);
        var grade = _grade < 0 ? null : row.Whole(_grade);
        if (exposure is not { } speed || verdict is not { } known || second is not { } again)
        {
            return null;
        }
        var frame = row.Try(
            grade is null ? null : _grade,
            () => FrameTable.FromFrames([new(speed, known) { Grade = grade, SecondVerdict = again }], options.KeeperFromGrade)[0],
            null
        );
        return frame is null ? null : row.Try(null, () => FrameTable.Create(frame with { Conditions = conditions })[0], null);
    }

    private static Verdict? ReadVerdict(in TableRow row, int index)
    {
        switch (row.Cell(index).ToString().ToUpperInvariant())
        {
            case "YES" or "TRUE" or "1":
                return Verdict.Keeper;
            case "NO" or "FALSE" or "0":
                return Verdict.Reject;
            case "":
                return Verdict.NotJudged;
            default:
                row.Wrong(
                    index,
                    "This is no verdict.",
                    "Write yes or no, true or false, 1 for a keeper or 0 for a reject; leave it empty for a frame not judged."
                );
                return null;
        }
    }
}
