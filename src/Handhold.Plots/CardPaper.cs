namespace Handhold.Plots;

/// <summary>The paper that field cards are printed on.</summary>
public enum CardPaper
{
    /// <summary>A sheet of A6 a card, 105 x 148 mm.</summary>
    A6 = 0,

    /// <summary>Sheets of A4 with four cards each, to be cut.</summary>
    A4 = 1,
}
