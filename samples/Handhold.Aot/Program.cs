// Fits, answers, saves and asks the saved fit again: the core as native code, without a runtime to install.
using Handhold;
using static Handhold.ShutterSpeed;

FrameTable table =
[
    new(OneOver(60), frames: 6, keepers: 6),
    new(OneOver(30), frames: 6, keepers: 5),
    new(OneOver(15), frames: 6, keepers: 3),
    new(OneOver(8), frames: 6, keepers: 0),
];
FittedCurves curves = KeeperModel.Default.Fit(table);
Console.WriteLine(curves.Only.HalfKeeperExposure());
Console.WriteLine(curves.Only.Slowest(rate: 0.8, assurance: 0.9));
Console.WriteLine(curves.Only.FramesNeeded(at: OneOver(15), keepers: 1, assurance: 0.95));

string path = Path.Combine(Path.GetTempPath(), Path.GetRandomFileName());
File.WriteAllText(path, SavedFit.Write(curves));
string again = SavedFit.Read(File.ReadAllText(path)).Only.HalfKeeperExposure().Sentence;
File.Delete(path);
Console.WriteLine($"Saved and loaded: {again}");
return again == curves.Only.HalfKeeperExposure().Sentence ? 0 : 1;
