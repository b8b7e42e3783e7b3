using System.Collections.Immutable;
using System.Text;

namespace Handhold.Plots;

/// <summary>One setup on one side of A6, for the bag: keeper rates, frames to shoot, the slowest speed to trust, and what all of it rests on.</summary>
/// <remarks>It computes nothing: it writes down what the curve answers, for another day unless the options say otherwise.</remarks>
public sealed class FieldCard
{
    internal FieldCard(CardFace face) => Face = face;

    /// <summary>Whose card it is: the values that tell the curve apart.</summary>
    public string Title => Face.Title;

    /// <summary>Everything on the card as plain text, for those who cannot see it.</summary>
    public string AlternativeText => CardWords.Aloud(Face);

    internal CardFace Face { get; }

    /// <summary>Asks a curve for everything on its card.</summary>
    /// <param name="curve">The fitted curve.</param>
    /// <param name="options">What to say; <see cref="FieldCardOptions.Default"/> when null.</param>
    /// <param name="cancellation">Stops the work.</param>
    /// <exception cref="ArgumentException">Rate or assurance is not above 0 and below 1.</exception>
    public static FieldCard Of(KeeperCurve curve, FieldCardOptions? options = null, CancellationToken cancellation = default)
    {
        ArgumentNullException.ThrowIfNull(curve);
        return new FieldCard(CardFace.Of(curve, options ?? FieldCardOptions.Default, cancellation));
    }

    /// <summary>A page with these cards that reads on a telephone and prints on the paper wanted; it needs no other file.</summary>
    /// <param name="cards">The cards, at least one.</param>
    /// <param name="paper">The paper.</param>
    /// <exception cref="ArgumentException">There is no card.</exception>
    public static string Html(IEnumerable<FieldCard> cards, CardPaper paper = CardPaper.A6)
    {
        ArgumentNullException.ThrowIfNull(cards);
        ImmutableArray<CardFace> faces = [.. cards.Select(c => c.Face)];
        return faces.IsEmpty ? throw new ArgumentException("A page needs at least one card.", nameof(cards)) : CardPage.Write(faces, paper);
    }

    /// <summary>Writes <see cref="Html"/> to a file; the file appears whole or not at all.</summary>
    /// <param name="cards">The cards, at least one.</param>
    /// <param name="path">File name; an existing file is replaced.</param>
    /// <param name="paper">The paper.</param>
    /// <exception cref="IOException">The file cannot be written; nothing is left behind.</exception>
    public static void SaveHtml(IEnumerable<FieldCard> cards, string path, CardPaper paper = CardPaper.A6) =>
        PictureFile.Write(path, Encoding.UTF8.GetBytes(Html(cards, paper)));

    /// <summary>Writes the card as a PNG in the proportions of A6; the file appears whole or not at all.</summary>
    /// <param name="path">File name that ends in <c>.png</c>; an existing file is replaced.</param>
    /// <param name="width">Width in pixels, 300 to 5 000; the default is A6 at 300 dots an inch.</param>
    /// <exception cref="ArgumentException">The extension is another one.</exception>
    /// <exception cref="ArgumentOutOfRangeException">The width is out of range.</exception>
    /// <exception cref="IOException">The file cannot be written; nothing is left behind.</exception>
    public void SavePicture(string path, int width = 1240)
    {
        ArgumentNullException.ThrowIfNull(path);
        if (width is < 300 or > 5_000)
        {
            throw new ArgumentOutOfRangeException(nameof(width), width, "A card's width is 300 to 5 000 pixels.");
        }

        if (!Path.GetExtension(path).Equals(".png", StringComparison.OrdinalIgnoreCase))
        {
            throw new ArgumentException($"Cannot write a card's picture to '{path}': end the file name in .png.", nameof(path));
        }

        PictureFile.Write(path, PngText.Describe(CardPicture.Png(Face, width), AlternativeText));
    }
}
