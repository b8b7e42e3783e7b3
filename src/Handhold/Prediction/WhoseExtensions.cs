using System.Collections.Immutable;

namespace Handhold;

/// <summary>Which levels a question of somebody's rate is about.</summary>
public static class WhoseExtensions
{
    /// <summary>Whether it is about the level of a column that conditions name, not a new one, a typical one or all. A new setup is new in all that belongs to it; where no setup varies, in what lies within another column that does.</summary>
    /// <param name="whose">Whose rate is asked for.</param>
    /// <param name="varying">The column.</param>
    /// <param name="all">All that varies.</param>
    public static bool Names(this Whose whose, Varying varying, ImmutableArray<Varying> all)
    {
        ArgumentNullException.ThrowIfNull(varying);
        return whose switch
        {
            Whose.This => true,
            Whose.NewSetup when all.Any(v => v.Column == "setup") => !varying.Path.Contains("setup"),
            Whose.NewSetup => !varying.Within.Any(all.Select(v => v.Column).Contains),
            _ => false,
        };
    }
}
