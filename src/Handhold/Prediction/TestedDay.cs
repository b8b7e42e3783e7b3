namespace Handhold.Prediction;

/// <summary>The tested day that is meant: the only one, or the one that is named.</summary>
internal static class TestedDay
{
    /// <exception cref="ConditionsException">No day, or more than one, is meant.</exception>
    internal static int Of(KeeperCurve curve, Conditions said)
    {
        var days = curve.Data.Days;
        int[] meant =
        [
            .. Enumerable
                .Range(0, days.Length)
                .Where(i => said.Session is null || days[i].Session == said.Session)
                .Where(i => said.Photographer is null || days[i].Photographer == said.Photographer),
        ];
        return meant is [var day]
            ? day
            : throw new ConditionsException(
                "session",
                meant.Length == 0
                    ? $"Curve {curve.Key} was not tested on a day called {said.Session}."
                    : $"Curve {curve.Key} was tested on {Say.Count(days.Length, "day")}, so 'the same day' names none of them.",
                $"Set session to today's, {string.Join(" or ", curve.Data.SessionLabels)}; or ask for another day."
            );
    }
}
