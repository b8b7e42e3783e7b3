namespace Handhold.Cli;

/// <summary>What a run ends with.</summary>
internal enum ExitCode
{
    /// <summary>The report is complete, statuses included.</summary>
    Done = 0,

    /// <summary>A question has no answer; the report says why.</summary>
    NoAnswer = 1,

    /// <summary>The command line cannot be followed.</summary>
    WrongUsage = 2,

    /// <summary>A file is missing or holds what it must not.</summary>
    BadInput = 3,

    /// <summary>A solver stopped short.</summary>
    SolverStopped = 4,

    /// <summary>A fault in Handhold.</summary>
    Fault = 70,

    /// <summary>Cancelled from the keyboard.</summary>
    Cancelled = 130,
}
