using System.Collections.Immutable;
using Handhold.Solvers;
using Handhold.Tables;

namespace Handhold.Cli;

/// <summary>Turns what went wrong into an exit code and a report: sentences on standard error, or with --json one object on standard output.</summary>
internal static class Failure
{
    public static ExitCode Report(Exception failure, Desk desk, bool json)
    {
        var (code, complaints) = Judge(failure);
        if (json && !complaints.IsEmpty)
            Json.Errors(desk, complaints);
        else
            Say.Errors(desk, complaints);
        return code;
    }

    private static (ExitCode, ImmutableArray<Complaint>) Judge(Exception failure) =>
        failure switch
        {
            OperationCanceledException => (ExitCode.Cancelled, []),
            UsageException usage => (ExitCode.WrongUsage, [usage.Complaint]),
            TableException table => (ExitCode.BadInput, [.. table.Errors.Select(Cell)]),
            InputException input => (ExitCode.BadInput, [input.Complaint]),
            ConditionsException unsaid => (
                ExitCode.WrongUsage,
                [
                    new(
                        "wrongUsage",
                        unsaid.Problem,
                        $"{unsaid.Remedy} Use {(unsaid.Term == "whose" ? "--whose this|typical|new-setup|new-photographer|population" : "--set COLUMN=VALUE")}."
                    ),
                ]
            ),
            SolverException stopped => (ExitCode.SolverStopped, [new("solverStopped", stopped.Message)]),
            CellException cell => (ExitCode.BadInput, [new("badInput", cell.Message[..^cell.Remedy.Length].TrimEnd(), cell.Remedy)]),
            SavedPlansException plans => (ExitCode.BadInput, [new("badPlans", plans.Message)]),
            SavedFitException saved => (ExitCode.BadInput, [new("badSavedFit", saved.Message)]),
            IOException or UnauthorizedAccessException => (
                ExitCode.BadInput,
                [new("fileNotUsable", failure.Message, "Check the path and its permissions.")]
            ),
            _ => (ExitCode.Fault, [Fault(failure)]),
        };

    private static Complaint Cell(TableError error) =>
        new("badInput", error.Message, error.Remedy)
        {
            File = error.File,
            Line = error.Line,
            Column = error.Column,
            Value = error.Value,
        };

    private static Complaint Fault(Exception failure) =>
        new(
            "fault",
            $"This is a fault in Handhold, not in your data: {failure.GetType().Name}: {failure.Message}",
            "Please report it with the command line and, if you may share it, the table."
        );
}
