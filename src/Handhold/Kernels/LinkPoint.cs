namespace Handhold.Kernels;

/// <summary>A link's curve F at one linear predictor, in forms that stay exact in both tails.</summary>
/// <param name="F">F.</param>
/// <param name="G">1 - F, not found by subtraction.</param>
/// <param name="LogF">log F.</param>
/// <param name="LogG">log(1 - F).</param>
/// <param name="Up">F'/F, the derivative of log F.</param>
/// <param name="Down">F'/(1 - F), minus the derivative of log(1 - F).</param>
/// <param name="Bend">F''/F'.</param>
/// <param name="BendChange">The derivative of F''/F'.</param>
/// <param name="UpLoss">F'/F - F''/F': minus the derivative of log(F'/F), never negative.</param>
/// <param name="DownGain">F'/(1 - F) + F''/F': the derivative of log(F'/(1 - F)), never negative.</param>
internal readonly record struct LinkPoint(
    double F,
    double G,
    double LogF,
    double LogG,
    double Up,
    double Down,
    double Bend,
    double BendChange,
    double UpLoss,
    double DownGain
);
