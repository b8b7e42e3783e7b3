namespace Handhold.Prediction;

/// <summary>How many keepers a planned shoot will bring.</summary>
internal static class CountQuestion
{
    internal static KeeperCountAnswer Answer(Question question, ShutterSpeed at, int frames, CancellationToken cancellation)
    {
        if (question.Barred(at) is { } barred)
            return new(question, at, frames, [], false, [barred]);
        var x = at.Log2Seconds;
        var counts = ShootLaw.For(question, x).Counts(frames, cancellation);
        return new(question, at, frames, counts, question.Tested(x), question.Remarks(at))
        {
            AsRejects = question.AsRejects(q => Answer(q, at, frames, cancellation)),
        };
    }
}
