namespace Handhold.Solvers;

public sealed partial record BinomialProblem
{
    private void CheckRows()
    {
        var frames = Frames.Span;
        var keepers = Keepers.Span;
        var columns = Columns.Length;
        if (frames.Length == 0)
            throw new ArgumentException("No rows. Give at least one.");
        if (keepers.Length != frames.Length || Design.Length != frames.Length * columns)
            throw Wrong(
                $"{frames.Length} frames, {keepers.Length} keepers and {Design.Length} numbers of {columns} columns do not fit. Give one of each a row."
            );
        if (Columns.Distinct().Count() != columns)
            throw Wrong(
                $"The columns {string.Join(", ", Columns)} do not name every coefficient once. Give each column a name of its own."
            );
        for (var row = 0; row < frames.Length; row++)
        {
            if (frames[row] < 1 || keepers[row] < 0 || keepers[row] > frames[row])
                throw Wrong(
                    $"Row {row + 1}: {keepers[row]} keepers of {frames[row]} frames is impossible. Give at least 1 frame and at most as many keepers."
                );
            for (var column = 0; column < columns; column++)
                if (!double.IsFinite(Design.Span[row * columns + column]))
                    throw Wrong(
                        $"Row {row + 1}, {Columns[column]}: {Design.Span[row * columns + column]} is not finite. Give a finite number."
                    );
        }
    }

    /// <summary>This problem, once what is set beside the rows has been checked; asked by every solver before work begins.</summary>
    internal BinomialProblem Checked(SolverOptions? options = null)
    {
        if (!Offset.IsEmpty && Offset.Length != Rows)
            throw Wrong($"{Offset.Length} offsets for {Rows} rows. Give one a row, or none.");
        foreach (var offset in Offset.Span)
            if (!double.IsFinite(offset))
                throw Wrong($"The offset {offset} is not finite. Give a finite number.");
        if (!((Floor ?? 0) >= 0 && (Ceiling ?? 1) <= 1 && (Floor ?? 0) < (Ceiling ?? 1)))
            throw Wrong($"Floor {Floor} and ceiling {Ceiling} are not 0 ≤ floor < ceiling ≤ 1. Move them.");
        if (options?.Held is { } held && held.Contrast.Length != Columns.Length)
            throw Wrong($"A contrast of {held.Contrast.Length} weights does not fit {Columns.Length} columns. Give one weight a column.");
        return this;
    }

    private static ArgumentException Wrong(FormattableString message) => new(FormattableString.Invariant(message));
}
