using System.Collections.Immutable;
using System.Diagnostics;
using Handhold.Photos;
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

    /// <summary>The same for photographs, with their number and how many are read in a second.</summary>
    public static T Counting<T>(Desk desk, string what, Func<IProgress<PhotoProgress>?, T> work) =>
        For(desk, what, progress => work(progress is Bar bar ? new Counter(bar, what) : null));

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

        public void Report(double value, string what)
        {
            task.Description = what;
            Report(value);
        }
    }

    private sealed class Counter(Bar bar, string what) : IProgress<PhotoProgress>
    {
        private readonly Stopwatch _clock = Stopwatch.StartNew();

        public void Report(PhotoProgress value) =>
            bar.Report(
                (double)value.Read / value.Found,
                FormattableString.Invariant($"{what} {value.Read} of {value.Found}, {value.Read / _clock.Elapsed.TotalSeconds:0} a second")
            );
    }
}
