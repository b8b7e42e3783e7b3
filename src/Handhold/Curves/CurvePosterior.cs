using System.Collections.Immutable;

namespace Handhold.Curves;

/// <summary>The posterior of one curve as answers need it.</summary>
internal sealed class CurvePosterior
{
    private readonly Lazy<RateLaw> _habitual;
    private readonly Lazy<RateLaw> _another;
    private readonly Lazy<RateLaw>? _same;

    /// <param name="habitual">The half point without the luck of a day.</param>
    /// <param name="anotherDay">The half point on a day with luck of its own.</param>
    /// <param name="sameDay">The half point on the tested day; empty with several sessions.</param>
    /// <param name="ceilings">Ceilings between the nodes.</param>
    /// <param name="floors">Floors between the nodes.</param>
    internal CurvePosterior(
        ImmutableArray<CurveAtom> habitual,
        ImmutableArray<CurveAtom> anotherDay,
        ImmutableArray<CurveAtom> sameDay,
        AsymptoteCells ceilings,
        AsymptoteCells floors
    )
    {
        HabitualAtoms = habitual;
        _habitual = new(() => new(habitual, ceilings, floors));
        _another = new(() => new(anotherDay, ceilings, floors));
        _same = sameDay.IsEmpty ? null : new(() => new(sameDay, ceilings, floors));
    }

    internal ImmutableArray<CurveAtom> HabitualAtoms { get; }

    /// <summary>Without the luck of a day.</summary>
    internal RateLaw Habitual => _habitual.Value;

    /// <summary>On a day with luck of its own.</summary>
    internal RateLaw AnotherDay => _another.Value;

    /// <summary>On the tested day; null when several days were tested.</summary>
    internal RateLaw? SameDay => _same?.Value;
}
