using System.ComponentModel;
using System.Diagnostics;
using System.Runtime.InteropServices;

namespace Handhold.Benchmarks;

/// <summary>newton.c, compiled for this machine where it has a compiler.</summary>
internal static unsafe class PlainC
{
    private static readonly delegate* unmanaged<int, double*, int*, int*, double*, int> s_newton = Load();

    internal static bool IsHere => s_newton != null;

    /// <summary>Deviance of the fit; <paramref name="found"/> takes its seven numbers.</summary>
    internal static double Fit(ReadOnlySpan<double> x, ReadOnlySpan<int> frames, ReadOnlySpan<int> keepers, Span<double> found)
    {
        fixed (
            double* at = x,
                to = found
        )
        fixed (
            int* n = frames,
                k = keepers
        )
            s_newton(x.Length, at, n, k, to);
        return found[5];
    }

    private static delegate* unmanaged<int, double*, int*, int*, double*, int> Load()
    {
        var folder = Directory.CreateTempSubdirectory().FullName;
        var (source, library) = (Path.Combine(AppContext.BaseDirectory, "newton.c"), Path.Combine(folder, "newton.so"));
        try
        {
            using var compiler = Process.Start("cc", ["-O3", "-march=native", "-shared", "-fPIC", "-o", library, source, "-lm"]);
            compiler.WaitForExit();
            return compiler.ExitCode == 0
                ? (delegate* unmanaged<int, double*, int*, int*, double*, int>)
                    NativeLibrary.GetExport(NativeLibrary.Load(library), "newton")
                : null;
        }
        catch (Win32Exception)
        {
            return null;
        }
        finally
        {
            Directory.Delete(folder, recursive: true);
        }
    }
}
