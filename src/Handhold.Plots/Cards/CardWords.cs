using System.Collections.Immutable;
using System.Globalization;
using System.Text;

namespace Handhold.Plots;

/// <summary>The words on a card.</summary>
internal static class CardWords
{
    /// <summary>Before a number that the priors decide.</summary>
    private const string OnPrior = "\u2248";

    public static (string Head, string Meaning) Trust(SlowestAnswer answer, FieldCardOptions options)
    {
        var wanted = $"{CurveWords.Percent(options.Rate)} keepers or more, {CurveWords.Percent(options.Assurance)} sure";
        return answer.Shutter is { } shutter
            ? (
                $"Trust {(RestsOnPrior(answer) ? OnPrior : "")}{Unbroken(shutter)}",
                $"the slowest speed for {wanted}{(answer.WithinTested ? "" : "; not tested itself")}"
            )
            : ("No speed to trust yet", $"none of those tested has {wanted}");
    }

    /// <summary>The number of frames, "over 30" beyond the budget, a dash where the curve declines.</summary>
    public static string Frames(FramesNeededAnswer answer) =>
        answer.Frames is { } frames ? (RestsOnPrior(answer) ? OnPrior : "") + frames.ToString(CultureInfo.InvariantCulture)
        : IsOverBudget(answer) ? "\u2013"
        : "?";

    /// <summary>From where on the frames for one keeper are more than anybody shoots.</summary>
    /// <param name="answers">Frames for one keeper at 95 %, fastest speed first.</param>
    /// <param name="budget">The most frames.</param>
    public static string Support(ImmutableArray<FramesNeededAnswer> answers, int budget)
    {
        var most = CurveWords.Count(budget, "frame");
        var sure = CurveWords.Percent(CardFace.Assurances[1]);
        if (answers.FirstOrDefault(a => !a.Reachable) is not { } first)
        {
            return $"Slower than {Unbroken(answers[^1].At)}: not tested. Use a support, or test it.";
        }

        var from = first == answers[0] ? $"At {Unbroken(first.At)} already" : $"From {Unbroken(first.At)} on";
        return IsOverBudget(first)
            ? $"{from}: use a support. One keeper, {sure} sure, takes more than {most}."
            : $"{from}: not tested. Use a support, or test it.";
    }

    public static ImmutableArray<string> Notes(KeeperCurve curve, FieldCardOptions options, ImmutableArray<Answer> answers)
    {
        var legend = new StringBuilder($"Bar: median keeper rate; line: {CurveWords.Percent(curve.Model.Level)} interval.");
        var frames = answers.OfType<FramesNeededAnswer>().ToArray();
        if (frames.Any(IsOverBudget))
        {
            legend.Append(CultureInfo.InvariantCulture, $" \u2013 more than {CurveWords.Count(options.Answers.Budget, "frame")}.");
        }

        if (answers.Any(a => a.HasAnswer && RestsOnPrior(a)))
        {
            legend.Append(CultureInfo.InvariantCulture, $" {OnPrior} rests on the prior: test more frames there.");
        }

        if (frames.Any(a => !a.Reachable && !IsOverBudget(a)))
        {
            legend.Append(" ? not answered: too little was tested.");
        }

        var (luck, day) = (frames[0].Luck, options.Answers.BurstsOf is { } m ? $"bursts of {CurveWords.Count(m, "frame")}" : "one burst");
        var doubt = frames[0].Doubt == "none" ? " Frames are counted as if the estimated rate were the true one." : "";
        return
        [
            legend.ToString(),
            $"{CurveWords.Data(curve)} {Date(curve.Data, options.Date)}",
            $"{CurveWords.Source(curve, options.Answers, "For")}; frames in {day}"
                + (luck.Kind == "none" ? "." : $", luck {luck.Origin}.")
                + doubt,
            .. curve.Statuses.Where(s => s.Code is StatusCode.WrongDirection or StatusCode.CurveDoesNotFit).Select(s => s.Message),
        ];
    }

    /// <summary>The card as somebody would read it out.</summary>
    public static string Aloud(CardFace face) =>
        string.Join(
            "\n",
            [
                face.Title,
                $"{face.Trust.Head}: {face.Trust.Meaning}.",
                .. face.Rows.Select(r =>
                    $"{r.Speed}: {Rate(r.Rate)}; frames for one keeper: "
                    + string.Join(", ", r.Frames.Zip(CardFace.Assurances, (f, c) => $"{f} at {CurveWords.Percent(c)}"))
                    + "."
                ),
                face.Support,
                .. face.Notes,
            ]
        );

    public static string Rate(RateEstimate? rate) => rate is null ? "not tested" : CurveWords.WholePercent(rate.Median);

    /// <summary>"Shot 2026-11-20 to 2026-11-22."</summary>
    private static string Date(CurveData data, string? given)
    {
        if (given is not null)
        {
            return $"Shot {given}.";
        }

        var days = data
            .SessionLabels.Where(s => DateOnly.TryParseExact(s, "yyyy-MM-dd", CultureInfo.InvariantCulture, default, out _))
            .ToArray();
        return days.Length == 0 || days.Length < data.SessionLabels.Length ? "Date not recorded."
            : days.Length == 1 ? $"Shot {days[0]}."
            : $"Shot {days[0]} to {days[^1]}.";
    }

    private static bool IsOverBudget(FramesNeededAnswer answer) =>
        !answer.Reachable && answer.Statuses.Any(s => s.Code == StatusCode.OverBudget);

    private static bool RestsOnPrior(Answer answer) => answer.Statuses.Any(s => s.Code == StatusCode.RestsOnPrior);

    private static string Unbroken(ShutterSpeed speed) => speed.ToString().Replace(' ', '\u00A0');
}
