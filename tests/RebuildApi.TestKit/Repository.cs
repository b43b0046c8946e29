namespace RebuildApi.TestKit;

/// <summary>Finds files of the checkout from wherever the tests run.</summary>
public static class Repository
{
    /// <summary>The folder that holds the solution.</summary>
    public static string Root { get; } = Find();

    public static string PathTo(params string[] parts) => Path.Combine([Root, .. parts]);

    private static string Find()
    {
        for (var folder = new DirectoryInfo(AppContext.BaseDirectory); folder is not null; folder = folder.Parent)
        {
            if (File.Exists(Path.Combine(folder.FullName, "RebuildApi.sln")))
                return folder.FullName;
        }

        throw new InvalidOperationException("The tests do not run inside the checkout.");
    }
}
