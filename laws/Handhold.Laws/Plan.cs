using System.Text.Json.Serialization;

namespace Handhold.Laws;

/// <summary>A plan for another day, or the refusal of one.</summary>
/// <param name="Rule">How the speed was chosen.</param>
/// <param name="At">The speed; null where the rule found none.</param>
/// <param name="Keepers">Keepers wanted.</param>
/// <param name="Assurance">Assurance wanted.</param>
/// <param name="BurstsOf">Frames a burst; null for one burst.</param>
/// <param name="Frames">Frames to shoot; null when declined.</param>
/// <param name="Stated">The assurance that the plan states.</param>
/// <param name="PlugIn">Frames to shoot by the posterior-mode curve as if known, frames independent.</param>
/// <param name="RestsOnPrior">Whether the answer says that it rests on the prior; asked only where it matters, since it costs two fits.</param>
internal readonly record struct Plan(
    string Rule,
    [property: JsonIgnore] ShutterSpeed? At,
    int Keepers,
    double Assurance,
    int? BurstsOf,
    int? Frames,
    double Stated,
    int? PlugIn,
    [property: JsonIgnore] Func<bool>? RestsOnPrior = null
);
