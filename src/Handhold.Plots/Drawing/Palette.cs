using System.Collections.Immutable;
using ScottPlot;

namespace Handhold.Plots;

/// <summary>The colours: told apart by the colour-blind and in grey, each text colour at least 4.5 : 1 against whatever lies behind it.</summary>
internal sealed record Palette
{
    public static Palette Light { get; } =
        new()
        {
            Paper = Color.FromHex("#FAF7F1"),
            Tested = Color.FromHex("#FFFFFF"),
            Grid = Color.FromHex("#E7E2D8"),
            Rule = Color.FromHex("#D9D3C7"),
            Ink = Color.FromHex("#20272B"),
            Quiet = Color.FromHex("#5C646A"),
            Curve = Color.FromHex("#0A4558"),
            Band = Color.FromHex("#CFE3E6"),
            Target = Color.FromHex("#A04608"),
            Series =
            [
                Color.FromHex("#0A4558"),
                Color.FromHex("#A04608"),
                Color.FromHex("#6B2D73"),
                Color.FromHex("#3F6212"),
                Color.FromHex("#8A1538"),
                Color.FromHex("#4A5568"),
            ],
        };

    public static Palette Dark { get; } =
        new()
        {
            Paper = Color.FromHex("#14181B"),
            Tested = Color.FromHex("#1C2226"),
            Grid = Color.FromHex("#333B40"),
            Rule = Color.FromHex("#3D464B"),
            Ink = Color.FromHex("#ECEFF0"),
            Quiet = Color.FromHex("#B3BCC1"),
            Curve = Color.FromHex("#A8E4F2"),
            Band = Color.FromHex("#23454F"),
            Target = Color.FromHex("#F2A56A"),
            Series =
            [
                Color.FromHex("#A8E4F2"),
                Color.FromHex("#F2A56A"),
                Color.FromHex("#D9A8E0"),
                Color.FromHex("#B5D46B"),
                Color.FromHex("#F59AB0"),
                Color.FromHex("#C3CCD6"),
            ],
        };

    public required Color Paper { get; init; }
    public required Color Tested { get; init; }
    public required Color Grid { get; init; }
    public required Color Rule { get; init; }
    public required Color Ink { get; init; }
    public required Color Quiet { get; init; }
    public required Color Curve { get; init; }
    public required Color Band { get; init; }
    public required Color Target { get; init; }

    /// <summary>Colours of things side by side; each also has a label and a dash pattern or shape of its own.</summary>
    public required ImmutableArray<Color> Series { get; init; }

    public static Palette Of(PictureTheme theme) => theme == PictureTheme.Dark ? Dark : Light;
}
