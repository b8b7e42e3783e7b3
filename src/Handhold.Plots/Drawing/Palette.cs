using ScottPlot;

namespace Handhold.Plots;

/// <summary>The colours: told apart by the colour-blind and in grey, each text colour at least 4.5 : 1 against whatever lies behind it.</summary>
internal static class Palette
{
    public static Color Paper => Color.FromHex("#FAF7F1");
    public static Color Tested => Color.FromHex("#FFFFFF");
    public static Color Grid => Color.FromHex("#E7E2D8");
    public static Color Ink => Color.FromHex("#20272B");
    public static Color Quiet => Color.FromHex("#5C646A");
    public static Color Curve => Color.FromHex("#0A4558");
    public static Color Band => Color.FromHex("#CFE3E6");
    public static Color Target => Color.FromHex("#A04608");
}
