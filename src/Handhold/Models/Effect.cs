namespace Handhold.Models;

/// <summary>A number of the model that says what something costs or buys.</summary>
/// <param name="Name">Its name in reports.</param>
/// <param name="Prior">What is believed of it before the data.</param>
internal sealed record Effect(string Name, NormalPrior Prior);
