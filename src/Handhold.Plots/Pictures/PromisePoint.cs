namespace Handhold.Plots;

/// <summary>Plans of one assurance.</summary>
/// <param name="Promised">Mean chance promised.</param>
/// <param name="Share">Share kept.</param>
/// <param name="Lower">Lower end of its interval.</param>
/// <param name="Upper">Upper end.</param>
/// <param name="Kept">Plans kept.</param>
/// <param name="Decided">Plans decided.</param>
internal sealed record PromisePoint(double Promised, double Share, double Lower, double Upper, int Kept, int Decided);
