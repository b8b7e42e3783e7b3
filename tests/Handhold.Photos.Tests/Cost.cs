using System.Diagnostics;

namespace Handhold.Photos.Tests;

/// <summary>What work costs on the test's own thread.</summary>
/// <param name="Milliseconds">The lesser of time passed and processor used, as a busy machine takes the one and other tests take the other.</param>
/// <param name="Bytes">Memory allocated.</param>
internal readonly record struct Cost(double Milliseconds, long Bytes)
{
    public static Cost Of(Action work)
    {
        var (clock, processor, bytes) = (Stopwatch.StartNew(), Environment.CpuUsage.TotalTime, GC.GetAllocatedBytesForCurrentThread());
        work();
        return new(
            Math.Min(clock.Elapsed.TotalMilliseconds, (Environment.CpuUsage.TotalTime - processor).TotalMilliseconds),
            GC.GetAllocatedBytesForCurrentThread() - bytes
        );
    }
}
