using System.Collections.Immutable;
using System.Globalization;

namespace Handhold.Fitting;

/// <summary>What to say of the luck that a likelihood found in bursts, or could not find.</summary>
internal static class LuckStatuses
{
    internal static void Add(KeeperModel model, CurveData data, LinearFit linear, ImmutableArray<Status>.Builder statuses)
    {
        if (model.Luck == LuckKind.None)
            return;
        if (linear.Likelihood.Shared is not { } shared)
        {
            var why = data.Bursts == 0 ? "No two frames share a recorded burst" : "Keepers and rejects separate";
            var remedy =
                data.Bursts == 0 ? "Record bursts to learn it" : "Frames at speeds where some are kept and some are not would tell";
            Add(
                StatusCode.BurstsNotAssessable,
                $"{why}, so the luck within a burst cannot be told, and frames are taken as independent. {remedy}."
            );
            return;
        }

        if (shared.IsEndless)
            Add(
                StatusCode.BurstsAllAlike,
                "Every burst kept or lost all of its frames, so a correlation of 1 fits best: a burst counts as one frame. Shoot bursts at speeds where some frames are kept and some are not."
            );
        else if (shared.Spread == 0)
            Add(
                StatusCode.NoGroupSpread,
                $"Frames of a burst are no more alike than frames of different bursts, so their shared luck is estimated as none{AtMost(linear)}."
            );
        if (!shared.HasSettled)
            Add(
                StatusCode.Approximate,
                FormattableString.Invariant(
                    $"{shared.Nodes.Count} quadrature nodes do not settle the log-likelihood: the luck of a burst is so large that its numbers are approximate. The beta-binomial kind needs no quadrature."
                )
            );
        if (data.Sessions > 1)
            Add(
                StatusCode.Approximate,
                FormattableString.Invariant(
                    $"The frames come from {data.Sessions} sessions, and this fit knows the luck of bursts only, so intervals leave the luck of days out. The posterior has both; so has a likelihood in which sessions vary, and bursts within them (--varies session=intercept --varies burst=intercept --within burst=session --luck none)."
                )
            );

        void Add(StatusCode code, string message) => statuses.Add(new(code, message));
    }

    private static string AtMost(LinearFit linear) =>
        linear.Luck is { Interval: { Upper: { } upper, Level: var level }, Name: var name }
            ? string.Create(
                CultureInfo.InvariantCulture,
                $"; with {100 * level:0.##} % confidence {(name == "rho" ? "their correlation" : "its sd")} is at most {upper:0.00}{(name == "rho" ? "" : " on the link's scale")}"
            )
            : "";
}
