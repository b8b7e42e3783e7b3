using Handhold.Randomness;
using Handhold.Simulation;

namespace Handhold.Laws;

/// <summary>Chance of at least so many true keepers from so many frames on another day, in bursts of so many or in one.</summary>
internal delegate double Chance(int keepers, int frames, int? burstsOf);

/// <summary>A photographer whose numbers are known.</summary>
/// <param name="Shoot">The frames of a plan, as they were judged.</param>
/// <param name="Shooting">What a shoot at one speed brings.</param>
internal sealed record Truth(Func<ShootPlan, RandomStream, FrameTable> Shoot, Func<ShutterSpeed, Chance> Shooting);
