using static Handhold.ShutterSpeed;

namespace Handhold.Tests.Serialization;

/// <summary>Fits to be saved: small, and quick to fit again.</summary>
internal static class SavedFits
{
    /// <summary>One curve without luck or ceiling.</summary>
    public static KeeperModel QuickModel { get; } = KeeperModel.Default with { Luck = LuckKind.None, Ceiling = Ceiling.One };

    public static FrameTable QuickTable { get; } = [new(OneOver(60), 6, 5), new(OneOver(30), 6, 3), new(OneOver(15), 6, 0)];

    public static string QuickText { get; } = SavedFit.Write(QuickModel.Fit(QuickTable));

    /// <summary>Two curves in bursts of two days with every condition there is, frames not judged, and a speed that no camera has.</summary>
    public static FrameTable RichTable { get; } =
    [
        .. from setup in new[] { "50 mm", "85 mm" }
        from session in new[] { "mon", "tue" }
        from shot in new[]
        {
            (Speed: OneOver(125), Keepers: 2),
            (Speed: OneOver(60), Keepers: 1),
            (Speed: FromSeconds(0.1 + 0.2), Keepers: 0),
        }
        select new FrameCell(shot.Speed, 2, shot.Keepers)
        {
            Unjudged = shot.Keepers,
            Conditions = Rich with { Setup = setup, Session = session, Burst = shot.Speed.ToExactText() },
        },
    ];

    private static Conditions Rich =>
        new()
        {
            Photographer = "Ada \"flash\" Å",
            Criterion = Criterion.Print,
            Judge = "Bo",
            FocalLength = 33.333333333333336,
            Crop = 1.5,
            PixelPitch = 3.9,
            StabiliserStops = 4,
            StabiliserMode = "body",
            Magnification = 0.1,
            SubjectMotion = "slight",
        };
}
