using System.Diagnostics.CodeAnalysis;

namespace Handhold.Tables;

/// <summary>Collects the errors of one file and stops the reading at the twentieth.</summary>
internal sealed class ErrorList(string file)
{
    private const int Most = 20;
    private readonly List<TableError> _errors = [];

    public int Count => _errors.Count;

    public void Add(int line, string? column, ReadOnlySpan<char> value, string message, string remedy)
    {
        _errors.Add(new(file, line, column, Shown.From(value), message, remedy));
        if (_errors.Count >= Most)
        {
            Throw();
        }
    }

    /// <summary>An error after which the rest of the file cannot be understood.</summary>
    [DoesNotReturn]
    public void Fatal(int line, string? column, ReadOnlySpan<char> value, string message, string remedy)
    {
        Add(line, column, value, message, remedy);
        Throw();
    }

    public void ThrowIfAny()
    {
        if (_errors.Count > 0)
        {
            Throw();
        }
    }

    [DoesNotReturn]
    private void Throw() => throw new TableException([.. _errors.OrderBy(e => e.Line).Take(Most)]);
}
