using System.CommandLine;

namespace Handhold.Cli;

/// <summary><c>handhold rate</c>: the keeper rate at a speed.</summary>
internal static class RateVerb
{
    public static Command Build(Desk desk)
    {
        var question = new Question("rate", "What share of frames will be keepers at a shutter speed?");
        var at = question.Add(Shared.At());
        return question.Answers(
            desk,
            given =>
            {
                var speeds = given.Speeds(at);
                return (curve, options) => speeds.Select(speed => curve.RateAt(speed, options));
            }
        );
    }
}
