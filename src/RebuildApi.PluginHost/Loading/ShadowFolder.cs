using System.Globalization;
using RebuildApi.PluginHost.Trust;

namespace RebuildApi.PluginHost.Loading;

/// <summary>
/// Writes the bytes that were hashed to a fresh folder for each load, so that the drop folder may change at any time and old code is never
/// met again under the same path. What an earlier run left behind is cleared away.
/// </summary>
internal sealed class ShadowFolder : IDisposable
{
    private readonly string _run;
    private readonly FileStream _lock;
    private int _generation;

    /// <summary>Opens a folder of this run's own.</summary>
    public ShadowFolder(string root)
    {
        Directory.CreateDirectory(root);
        foreach (var old in Directory.EnumerateDirectories(root, "run-*"))
            RemoveAbandoned(old);
        _run = Path.Combine(root, "run-" + Path.GetRandomFileName());
        Directory.CreateDirectory(_run);
        _lock = new FileStream(LockOf(_run), FileMode.CreateNew, FileAccess.ReadWrite, FileShare.None);
    }

    /// <summary>Writes a plug-in's assemblies to a new folder.</summary>
    /// <returns>The copy; its folder is named as the plug-in.</returns>
    public ShadowCopy Write(PluginFiles files)
    {
        var number = Interlocked.Increment(ref _generation).ToString(CultureInfo.InvariantCulture);
        var copy = new ShadowCopy(Path.Combine(_run, number));
        var folder = Directory.CreateDirectory(copy.FolderOf(files.Id)).FullName;
        foreach (var file in files.Files)
            File.WriteAllBytes(Path.Combine(folder, file.Name), file.Bytes);
        return copy;
    }

    /// <summary>Removes this run's folder.</summary>
    public void Dispose()
    {
        _lock.Dispose();
        new ShadowCopy(_run).Dispose();
    }

    private static string LockOf(string run) => Path.Combine(run, "in-use");

    private static void RemoveAbandoned(string run)
    {
        try
        {
            // Another service that is alive holds its lock.
            using (new FileStream(LockOf(run), FileMode.OpenOrCreate, FileAccess.ReadWrite, FileShare.None))
            {
            }

            new ShadowCopy(run).Dispose();
        }
        catch (IOException)
        {
            return;
        }
    }
}
