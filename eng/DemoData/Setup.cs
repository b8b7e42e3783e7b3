namespace DemoData;

/// <summary>Camera, lens and motif, as the columns of the table name them.</summary>
internal sealed record Setup(
    string Name,
    int FocalLength,
    int StabiliserStops,
    string StabiliserMode,
    string Magnification,
    string Motion,
    string Criterion
)
{
    internal static readonly Setup Room = new("room 24 mm", 24, 0, "off", "0.01", "still", "pixel");
    internal static readonly Setup Dial = new("dial 85 mm", 85, 0, "off", "0.1", "still", "print");
    internal static readonly Setup SteadyDial = Dial with { Name = "dial 85 mm stabilised", StabiliserStops = 4, StabiliserMode = "lens" };
    internal static readonly Setup Movement = new("movement close", 60, 4, "body", "0.4", "still", "print");
    internal static readonly Setup Pendulum = new("pendulum 35 mm", 35, 0, "off", "0.03", "brisk", "print");
}
