using System.Collections.Immutable;

namespace Handhold.Prediction;

/// <summary>The slowest marked speed at which something holds with an assurance.</summary>
internal static class SlowestQuestion
{
    internal static SlowestAnswer Answer(Question question, string wanted, double assurance, Func<Question, double, double> chance)
    {
        var allowed = MarkedSpeeds.Series(question.Options.Marks).Where(m => !question.Declined(m.Log2Seconds)).ToArray();
        if (allowed.Length == 0)
            allowed = [question.Curve.Data.Fastest];
        var found = Find(question, assurance, chance, allowed);
        if (found < 0)
        {
            var fastest = allowed[0];
            Status none = new(
                StatusCode.NotReachable,
                $"Even {fastest} does not give {wanted} with {Say.Percent(assurance)} assurance; it gives {Say.Percent(chance(question, fastest.Log2Seconds))}. Test faster speeds or more frames, or use a support where the place allows one."
            );
            return new(question, wanted, null, null, false, [none, .. question.Throughout])
            {
                AsRejects = question.AsRejects(q => Answer(q, wanted, assurance, chance)),
            };
        }

        var (mark, attained) = (allowed[found], chance(question, allowed[found].Log2Seconds));
        var tested = question.Tested(mark.Log2Seconds);
        ImmutableArray<Status> statuses = [];
        if (found == allowed.Length - 1)
            statuses =
            [
                new(
                    StatusCode.OutsideTestedRange,
                    $"Slower speeds may do as well, but none slower than {question.Curve.Data.Slowest} was tested: shoot some there to know."
                ),
            ];
        else if (!tested)
            statuses = [question.Outside(mark, declined: false)];
        statuses = [.. statuses, .. question.Throughout];
        statuses = question.WithPriorCheck(
            statuses,
            q => Find(q, assurance, chance, allowed) is >= 0 and var i ? allowed[i].Seconds : null,
            "the speed"
        );
        var rejects = question.AsRejects(q => Answer(q, wanted, assurance, chance));
        statuses = question.WithMissing(
            statuses,
            rejects is null || rejects.Shutter == mark ? null
                : rejects.Shutter is { } other ? $"the slowest mark would be {other}"
                : "no mark would do"
        );
        return new(question, wanted, mark, attained, tested, statuses) { AsRejects = rejects };
    }

    /// <summary>Index of the slowest mark that holds; the chance falls with exposure, so by bisection. -1: none.</summary>
    private static int Find(Question question, double assurance, Func<Question, double, double> chance, ShutterSpeed[] marks)
    {
        var (holds, fails) = (-1, marks.Length);
        while (fails - holds > 1)
        {
            var middle = (holds + fails) / 2;
            if (chance(question, marks[middle].Log2Seconds) >= assurance)
                holds = middle;
            else
                fails = middle;
        }

        return holds;
    }
}
