using System.Collections.Immutable;
using System.Text.Json;

namespace Handhold.Laws;

/// <summary>The outcomes of a long run, world by world in a file, so that a run that was stopped goes on where it was.</summary>
/// <remarks>The file's name carries the builds of library and laws: other code starts another file.</remarks>
internal sealed class Ledger
{
    private readonly string _path;
    private readonly List<IReadOnlyList<Outcome>> _worlds = [];

    internal Ledger(string folder, string design)
    {
        var builds = $"{typeof(KeeperModel).Module.ModuleVersionId:N}-{typeof(Ledger).Module.ModuleVersionId:N}";
        _path = Path.Combine(Directory.CreateDirectory(folder).FullName, $"{design.Replace(' ', '-')}-{builds}.jsonl");
        if (File.Exists(_path))
        {
            _worlds.AddRange(File.ReadLines(_path).Select(line => JsonSerializer.Deserialize<Outcome[]>(line)!));
        }
    }

    internal IReadOnlyList<IReadOnlyList<Outcome>> Worlds => _worlds;

    internal void Add(ImmutableArray<IReadOnlyList<Outcome>> worlds)
    {
        File.AppendAllLines(_path, worlds.Select(world => JsonSerializer.Serialize(world)));
        _worlds.AddRange(worlds);
    }
}
