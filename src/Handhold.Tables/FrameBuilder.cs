using System.Globalization;
using Microsoft.Data.Analysis;

namespace Handhold.Tables;

/// <summary>Rows of named values, gathered into a data frame; a value that a row lacks is a null.</summary>
internal sealed class FrameBuilder
{
    private readonly List<string> _names = [];
    private readonly List<Dictionary<string, object?>> _rows = [];

    /// <summary>The conditions recorded: numbers as numbers, labels as text.</summary>
    public static IEnumerable<(string Name, object? Value)> Recorded(Conditions conditions) =>
        ConditionColumn
            .All.Where(c => conditions[c.Name] is not null)
            .Select(c => (c.Name, c.IsText ? (object?)conditions[c.Name] : double.Parse(conditions[c.Name]!, CultureInfo.InvariantCulture)))
            .Concat(conditions.Others.Select(o => (o.Key, (object?)o.Value)));

    public void Add(IEnumerable<(string Name, object? Value)> row)
    {
        Dictionary<string, object?> values = [];
        foreach (var (name, value) in row)
        {
            if (!_names.Contains(name))
            {
                _names.Add(name);
            }

            values.Add(name, value);
        }

        _rows.Add(values);
    }

    public DataFrame Finish() => new(_names.Select(Column));

    private DataFrameColumn Column(string name)
    {
        var values = _rows.Select(r => r.GetValueOrDefault(name)).ToArray();
        return values.FirstOrDefault(v => v is not null) switch
        {
            double => new DoubleDataFrameColumn(name, values.Select(v => (double?)v)),
            int => new Int32DataFrameColumn(name, values.Select(v => (int?)v)),
            bool => new BooleanDataFrameColumn(name, values.Select(v => (bool?)v)),
            null when name is "grade" => new Int32DataFrameColumn(name, values.Select(v => (int?)v)),
            null when name is "keeper" => new BooleanDataFrameColumn(name, values.Select(v => (bool?)v)),
            _ => new StringDataFrameColumn(name, values.Select(v => (string)v!)),
        };
    }
}
