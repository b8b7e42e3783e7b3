namespace Handhold.Solvers;

/// <summary>What a contrast is held at, which may depend on the spread: the value and its first two derivatives.</summary>
internal delegate (double Value, double Slope, double Bend) HeldHeight(double spread);
