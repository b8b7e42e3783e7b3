using System.Collections;
using System.Collections.Immutable;

namespace Handhold;

/// <summary>The curves of one fit, ordered by key.</summary>
public sealed class FittedCurves : IReadOnlyList<KeeperCurve>
{
    private readonly ImmutableArray<KeeperCurve> _curves;

    internal FittedCurves(KeeperModel model, ImmutableArray<KeeperCurve> curves) => (Model, _curves) = (model, curves);

    /// <summary>The model that was fitted.</summary>
    public KeeperModel Model { get; }

    /// <summary>Log of the probability of all verdicts under model and priors, Bernoulli scale: no binomial coefficients; NaN where no priors were used.</summary>
    public double LogEvidence { get; internal init; }

    /// <summary>The one curve of this fit.</summary>
    /// <exception cref="InvalidOperationException">There are several; the message lists them.</exception>
    public KeeperCurve Only =>
        _curves.Length == 1
            ? _curves[0]
            : throw new InvalidOperationException(
                $"This fit has {_curves.Length} curves: {string.Join("; ", _curves.Select(c => c.Key))}. Choose one by its key."
            );

    /// <inheritdoc />
    public int Count => _curves.Length;

    /// <inheritdoc />
    public KeeperCurve this[int index] => _curves[index];

    /// <inheritdoc />
    public IEnumerator<KeeperCurve> GetEnumerator() => ((IEnumerable<KeeperCurve>)_curves).GetEnumerator();

    IEnumerator IEnumerable.GetEnumerator() => GetEnumerator();
}
