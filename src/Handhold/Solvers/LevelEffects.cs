using System.Collections.Immutable;

namespace Handhold.Solvers;

/// <summary>What the levels of one grouping add to the coefficients of one or two columns: normal about zero, the two of a level correlated.</summary>
/// <param name="LevelOf">The level of each row, from 0 up.</param>
/// <param name="Levels">How many levels there are.</param>
/// <param name="Columns">The columns of the design, one or two.</param>
internal sealed record LevelEffects(ImmutableArray<int> LevelOf, int Levels, ImmutableArray<int> Columns)
{
    internal int Size => Columns.Length;

    /// <summary>Numbers that describe their spread: those of a lower triangle.</summary>
    internal int Spreads => Size * (Size + 1) / 2;

    /// <summary>The effects of rows one after another, counted from the lowest of their levels.</summary>
    internal LevelEffects Slice(int first, int rows)
    {
        var levels = LevelOf.Slice(first, rows);
        var (lowest, highest) = (levels.Min(), levels.Max());
        return this with { LevelOf = [.. levels.Select(level => level - lowest)], Levels = highest - lowest + 1 };
    }
}
