using System.Collections.Immutable;
using Handhold.Curves;

namespace Handhold.Prediction;

/// <summary>Keepers of a shoot at one speed: in one burst, or in bursts of equal size with a fresh grip each, the last possibly short.</summary>
internal sealed class ShootLaw
{
    private readonly IBurstLaw? _one;
    private readonly IBurstsLaw? _several;
    private readonly int _burstsOf;

    private ShootLaw(IBurstLaw? one, IBurstsLaw? several, int burstsOf) => (_one, _several, _burstsOf) = (one, several, burstsOf);

    internal static ShootLaw For(Question question, double exposure) =>
        question.Options.BurstsOf is { } size && question.Law.SharesLuck
            ? new(null, question.Law.Bursts(exposure), size)
            : new(question.Law.BurstRates(exposure), null, question.Options.BurstsOf ?? 0);

    internal double AtLeast(int keepers, int frames, CancellationToken cancellation)
    {
        if (keepers > frames)
            return 0;
        if (_one is not null)
            return _one.AtLeast(keepers, frames);
        return Math.Clamp(1 - _several!.Fewer(keepers, frames / _burstsOf, _burstsOf, frames % _burstsOf, cancellation).Sum(), 0, 1);
    }

    internal ImmutableArray<double> Counts(int frames, CancellationToken cancellation) =>
        _one is not null
            ? [.. Enumerable.Range(0, frames + 1).Select(k => _one.Exactly(k, frames))]
            : [.. _several!.Fewer(frames + 1, frames / _burstsOf, _burstsOf, frames % _burstsOf, cancellation)];

    internal ImmutableArray<int> Bursts(int frames) =>
        _burstsOf == 0 ? [frames]
        : frames % _burstsOf == 0 ? [.. Enumerable.Repeat(_burstsOf, frames / _burstsOf)]
        : [.. Enumerable.Repeat(_burstsOf, frames / _burstsOf), frames % _burstsOf];
}
