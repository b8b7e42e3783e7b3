using System.Collections.Frozen;
using System.Globalization;
using System.Text.RegularExpressions;

namespace Handhold.Tables;

/// <summary>The column of shutter speeds: <c>exposure</c> as people write them, or <c>exposure_s</c> in plain seconds.</summary>
internal sealed partial class ExposureColumn(TableHeader header, ErrorList errors)
{
    private const int SlowestMark = 30; // s, the longest time marked on cameras
    private const int LeastTelling = 8; // below it, seconds such as 1, 2, 4 are as likely as fractions
    private const int FirstDay = 10_000; // spreadsheets number the days: 1927
    private const int LastDay = 80_000; // and 2119

    // Every x of the marks 1/x, and of the faster ones that electronic shutters have.
    private static readonly FrozenSet<int> Fractions = MarkedSpeeds
        .Series(Marks.Third)
        .Concat(MarkedSpeeds.Series(Marks.Half))
        .Where(mark => mark.Seconds <= 1)
        .Select(mark => (int)Math.Round(1 / mark.Seconds))
        .Concat([10_000, 12_800, 16_000, 20_000, 25_600, 32_000, 64_000])
        .ToFrozenSet();

    private readonly bool _plainSeconds = header.Has("exposure_s");
    private readonly int _index = header.IndexOf(header.Has("exposure_s") ? "exposure_s" : "exposure");
    private readonly List<(int Line, int Number)> _doubtful = [];
    private bool _onlyFractions = true;

    public ShutterSpeed? Read(in TableRow row)
    {
        if (row.IsBlank(_index))
        {
            row.Wrong(_index, "The shutter speed is missing.", "Write it in every row.");
            return null;
        }
        return _plainSeconds ? Seconds(row) : Written(row);
    }

    /// <summary>After the last row: refuses numbers that are the x of 1/x and would be read as seconds.</summary>
    public void Finish()
    {
        if (_plainSeconds)
        {
            return;
        }
        if (_onlyFractions && _doubtful.Count > 0)
        {
            Refuse(
                _doubtful[0],
                "Every shutter speed in this column is a whole number that stands for a fraction on cameras, and would be read as seconds."
            );
            return;
        }
        foreach (var doubtful in _doubtful.Where(d => d.Number > SlowestMark))
        {
            Refuse(doubtful, "A whole number is read as seconds, and no camera marks so many.");
        }
    }

    private ShutterSpeed? Seconds(in TableRow row)
    {
        if (row.Number(_index) is not { } seconds)
        {
            return null;
        }
        if (seconds > 0)
        {
            return ShutterSpeed.FromSeconds(seconds);
        }
        row.Wrong(_index, "An exposure time of zero or less is none.", "Write a positive number of seconds.");
        return null;
    }

    private ShutterSpeed? Written(in TableRow row)
    {
        if (!row.Pointed(_index, out var cell))
        {
            return null;
        }
        var isWhole = int.TryParse(cell, NumberStyles.None, CultureInfo.InvariantCulture, out var number);
        var isFraction = isWhole && Fractions.Contains(number);
        _onlyFractions &= isFraction;
        if (isFraction && number >= LeastTelling)
        {
            _doubtful.Add((row.Line, number));
        }
        var isSpeed = ShutterSpeed.TryParse(cell, out var speed, out var problem);
        if (isSpeed && (!isWhole || isFraction || number is < FirstDay or > LastDay))
        {
            return speed;
        }
        if (isSpeed || LooksLikeDate().IsMatch(cell))
        {
            row.Wrong(
                _index,
                "This looks like a date: spreadsheets turn 1/60 into one.",
                "Format the column as text, or write 1/60 s, and type the shutter speeds again."
            );
            return null;
        }
        row.Wrong(_index, problem.Replace(ShutterSpeed.AcceptedForms, "", StringComparison.Ordinal).TrimEnd(), ShutterSpeed.AcceptedForms);
        return null;
    }

    private void Refuse((int Line, int Number) doubtful, string message)
    {
        var number = doubtful.Number.ToString(CultureInfo.InvariantCulture);
        errors.Add(
            doubtful.Line,
            header.Names[_index],
            number,
            message,
            $"Write 1/{number} for a fraction, {number} s for seconds, or name the column exposure_s."
        );
    }

    // 1960-01-01, 1.1.60, 01/60/2024, with or without a time; Jan-60, 1-Jan, 60. januar, Jan 1, 1960: letters of any language.
    [GeneratedRegex(
        @"^(\d{4}[-./]\d{1,2}([-./]\d{1,2})?|\d{1,2}[-./]\d{1,2}[-./](\d{4}|\d{2}))([T ].*)?$"
            + @"|^\p{L}{3,}\.?[- ./]*\d{1,4}([- ,./]+\d{2,4})?$|^\d{1,4}[- ./]+\p{L}{3,}\.?([- ./]*\d{2,4})?$",
        RegexOptions.CultureInvariant | RegexOptions.ExplicitCapture
    )]
    private static partial Regex LooksLikeDate();
}
