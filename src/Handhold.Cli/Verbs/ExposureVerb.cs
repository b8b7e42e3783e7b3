using System.CommandLine;

namespace Handhold.Cli;

/// <summary><c>handhold exposure</c>: the exposure that has a keeper rate.</summary>
internal static class ExposureVerb
{
    public static Command Build(Desk desk)
    {
        var question = new Question("exposure", "At which exposure is a given share of frames keepers?");
        var rate = question.Add(Shared.Rate());
        return question.Answers(
            desk,
            given =>
            {
                var wanted = given.Need(rate, Reading.Share);
                return (curve, options) => [curve.ExposureFor(wanted, options)];
            }
        );
    }
}
