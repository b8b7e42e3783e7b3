using System.Collections.Immutable;

namespace Handhold;

/// <summary>The exposures that are compatible with a wanted rate, as one or two pieces in log2 seconds.</summary>
public sealed class ExposureSet
{
    internal ExposureSet(ExposureSetKind kind, ImmutableArray<ExposurePiece> pieces, string method) =>
        (Kind, Pieces, Method) = (kind, pieces, method);

    /// <summary>The shape.</summary>
    public ExposureSetKind Kind { get; }

    /// <summary>The pieces, fastest first; empty when not reachable.</summary>
    public ImmutableArray<ExposurePiece> Pieces { get; }

    /// <summary>How it was made, such as <c>equalTailed</c>.</summary>
    public string Method { get; }
}
