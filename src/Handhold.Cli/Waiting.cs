using System.Collections.Immutable;
using Spectre.Console;

namespace Handhold.Cli;

/// <summary>Shows progress on standard error while somebody watches, and nothing otherwise.</summary>
internal static class Waiting
{
    public static T For<T>(Desk desk, string what, Func<IProgress<double>?, T> work)
    {
        if (!desk.Watched)
            return work(null);
        var console = AnsiConsole.Create(new AnsiConsoleSettings { Out = new AnsiConsoleOutput(desk.Error) });
        return console
            .Progress()
            .AutoClear(true)
            .Columns(new TaskDescriptionColumn(), new ProgressBarColumn(), new PercentageColumn())
            .Start(shown => work(new Bar(shown.AddTask(what, maxValue: 1))));
    }

    /// <summary>The same for work item by item.</summary>
    public static ImmutableArray<TResult> ForEach<TItem, TResult>(
        Desk desk,
        string what,
        IReadOnlyCollection<TItem> items,
        Func<TItem, IEnumerable<TResult>> work
    ) =>
        For(
            desk,
            what,
            progress =>
            {
                var results = ImmutableArray.CreateBuilder<TResult>();
                foreach (var (number, item) in items.Index())
                {
                    desk.Cancellation.ThrowIfCancellationRequested();
                    results.AddRange(work(item));
                    progress?.Report((number + 1.0) / items.Count);
                }

                return results.ToImmutable();
            }
        );

    private sealed class Bar(ProgressTask task) : IProgress<double>
    {
        public void Report(double value) => task.Value = value;
    }
}
