namespace Handhold.Laws;

/// <summary>How the speed of a plan is chosen; null where the rule finds none.</summary>
internal sealed record SpeedRule(string Name, Func<KeeperCurve, ShutterSpeed?> Speed);
