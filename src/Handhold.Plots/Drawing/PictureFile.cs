namespace Handhold.Plots;

/// <summary>Files that appear whole or not at all.</summary>
internal static class PictureFile
{
    public static void Write(string path, byte[] bytes)
    {
        var unfinished = $"{path}.{Environment.ProcessId}.unfinished";
        try
        {
            File.WriteAllBytes(unfinished, bytes);
            File.Move(unfinished, path, overwrite: true);
        }
        finally
        {
            File.Delete(unfinished);
        }
    }
}
