using System.Collections.Immutable;

namespace Handhold.Curves;

/// <summary>The posterior of one curve as answers need it.</summary>
/// <param name="Habitual">The half point without the luck of a day.</param>
/// <param name="AnotherDay">The half point on a day with luck of its own.</param>
/// <param name="SameDay">The half point on the tested day; empty with several sessions.</param>
internal sealed record CurvePosterior(
    ImmutableArray<CurveAtom> Habitual,
    ImmutableArray<CurveAtom> AnotherDay,
    ImmutableArray<CurveAtom> SameDay
);
