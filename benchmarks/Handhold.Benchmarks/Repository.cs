using System.Diagnostics;

namespace Handhold.Benchmarks;

/// <summary>Where the results go, and what they were measured on.</summary>
internal static class Repository
{
    internal static string Root { get; } = Find(AppContext.BaseDirectory);

    /// <summary>The commit checked out, "and changes" where files differ from it.</summary>
    internal static string Commit() =>
        Git("rev-parse", "--short=10", "HEAD").Trim()
        + (Git("status", "--porcelain", "--", "src", "benchmarks").Length > 0 ? " and changes" : "");

    /// <summary>Processes that ran or waited over the last minute, where the system tells.</summary>
    internal static string Load() => File.Exists("/proc/loadavg") ? File.ReadAllText("/proc/loadavg").Split(' ')[0] : "unknown";

    private static string Git(params string[] arguments)
    {
        using var git = Process.Start(new ProcessStartInfo("git", arguments) { WorkingDirectory = Root, RedirectStandardOutput = true })!;
        return git.StandardOutput.ReadToEnd();
    }

    private static string Find(string folder) =>
        File.Exists(Path.Combine(folder, "Handhold.slnx")) ? folder : Find(Path.GetDirectoryName(folder)!);
}
