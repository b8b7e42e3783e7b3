using System.Collections.Immutable;

namespace Handhold.Plots;

/// <summary>The words around a picture.</summary>
/// <param name="Title">The finding.</param>
/// <param name="Subject">Whose it is; empty when there is nothing to tell apart.</param>
/// <param name="Captions">What it rests on, a paragraph each.</param>
/// <param name="Aloud">What is drawn, in sentences.</param>
internal sealed record PictureWords(string Title, string Subject, ImmutableArray<string> Captions, string Aloud)
{
    /// <summary>The curve's name, where there is something to tell apart.</summary>
    public static string Name(KeeperCurve curve) => curve.Key.Values.IsEmpty ? "" : curve.Key.ToString();
}
