namespace Handhold.Cli.Tests;

/// <summary>A folder that lives as long as a test.</summary>
internal sealed class Folder : IDisposable
{
    private readonly DirectoryInfo _folder = Directory.CreateTempSubdirectory("handhold-");

    public string this[string name] => Path.Combine(_folder.FullName, name);

    public IEnumerable<string> Files => _folder.EnumerateFiles("*", SearchOption.AllDirectories).Select(f => f.Name);

    public string Write(string name, string text)
    {
        File.WriteAllText(this[name], text);
        return this[name];
    }

    public void Dispose() => _folder.Delete(recursive: true);
}
