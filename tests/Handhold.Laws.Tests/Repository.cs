namespace Handhold.Laws.Tests;

/// <summary>Where the repository's files are.</summary>
internal static class Repository
{
    private static string Root
    {
        get
        {
            for (DirectoryInfo? folder = new(AppContext.BaseDirectory); folder is not null; folder = folder.Parent)
            {
                if (File.Exists(System.IO.Path.Combine(folder.FullName, "Handhold.slnx")))
                {
                    return folder.FullName;
                }
            }
            throw new DirectoryNotFoundException("No folder above the tests has Handhold.slnx: run them from inside the repository.");
        }
    }

    internal static string Path(params string[] parts) => System.IO.Path.Combine([Root, .. parts]);
}
