namespace RebuildApi.PluginHost.Loading;

/// <summary>One generation of shadow copies. It goes when the code that was loaded from it is let go, so that swapping for ever fills no disk.</summary>
/// <param name="root">The folder that is its own.</param>
internal sealed class ShadowCopy(string root) : IDisposable
{
    /// <summary>The folder of a plug-in's assemblies, named as the plug-in.</summary>
    public string FolderOf(string id) => Path.Combine(root, id);

    /// <summary>Removes it.</summary>
    public void Dispose()
    {
        try
        {
            Directory.Delete(root, recursive: true);
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException)
        {
            // Left for the next start; nothing is ever loaded from it again.
        }
    }
}
