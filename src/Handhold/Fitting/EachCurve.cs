using System.Collections.Immutable;
using System.Runtime.ExceptionServices;
using System.Runtime.InteropServices;

namespace Handhold.Fitting;

/// <summary>The same work for every curve, or stretch of a table, on every processor.</summary>
internal static class EachCurve
{
    /// <summary>The results in the order of the curves; where some fail, the failure of the first, on any number of processors.</summary>
    internal static ImmutableArray<TResult> Do<T, TResult>(
        IReadOnlyList<T> curves,
        Func<T, TResult> work,
        IProgress<double>? progress = null,
        CancellationToken cancellation = default
    )
    {
        var (results, failures) = (new TResult[curves.Count], new Exception?[curves.Count]);
        var (done, telling) = (0, new Lock());
        Parallel.For(
            0,
            curves.Count,
            new ParallelOptions { CancellationToken = cancellation, MaxDegreeOfParallelism = Environment.ProcessorCount },
            (i, loop) =>
            {
                try
                {
                    results[i] = work(curves[i]);
                }
                catch (Exception failure) when (failure is not OperationCanceledException)
                {
                    failures[i] = failure;
                    // Every curve before this one is still worked on.
                    loop.Break();
                    return;
                }

                lock (telling)
                    progress?.Report(++done / (double)curves.Count);
            }
        );
        if (failures.FirstOrDefault(f => f is not null) is { } first)
            ExceptionDispatchInfo.Throw(first);
        return ImmutableCollectionsMarshal.AsImmutableArray(results);
    }
}
