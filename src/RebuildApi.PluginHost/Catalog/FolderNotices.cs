using System.Threading.Channels;

namespace RebuildApi.PluginHost.Catalog;

/// <summary>The system's notices that something changed in some folders, whatever it was.</summary>
internal sealed class FolderNotices : IDisposable
{
    private readonly Dictionary<string, FileSystemWatcher> _watchers = new(StringComparer.Ordinal);
    private readonly Channel<bool> _notices = Channel.CreateBounded<bool>(new BoundedChannelOptions(1) { FullMode = BoundedChannelFullMode.DropWrite });

    /// <summary>Listens to the folders that are there; one that comes later is listened to from the next call on.</summary>
    public void Attach(IEnumerable<string> folders)
    {
        foreach (var gone in _watchers.Keys.Where(f => !Directory.Exists(f)).ToList())
        {
            _watchers[gone].Dispose();
            _watchers.Remove(gone);
        }

        foreach (var folder in folders.Where(f => Directory.Exists(f) && !_watchers.ContainsKey(f)).ToList())
        {
            if (Listen(folder) is { } watcher)
                _watchers[folder] = watcher;
        }
    }

    /// <summary>Waits for a notice, but no longer than said.</summary>
    public async Task Next(TimeSpan atMost, CancellationToken cancellation)
    {
        using var enough = CancellationTokenSource.CreateLinkedTokenSource(cancellation);
        enough.CancelAfter(atMost);
        try
        {
            await _notices.Reader.ReadAsync(enough.Token);
        }
        catch (OperationCanceledException) when (!cancellation.IsCancellationRequested)
        {
            // None came: it is looked at all the same.
        }
    }

    /// <inheritdoc/>
    public void Dispose()
    {
        foreach (var watcher in _watchers.Values)
            watcher.Dispose();
    }

    private FileSystemWatcher? Listen(string folder)
    {
        try
        {
            var watcher = new FileSystemWatcher(folder)
            {
                IncludeSubdirectories = true,
                NotifyFilter = NotifyFilters.FileName | NotifyFilters.DirectoryName | NotifyFilters.LastWrite | NotifyFilters.Size,
            };
            watcher.Changed += Notice;
            watcher.Created += Notice;
            watcher.Deleted += Notice;
            watcher.Renamed += Notice;
            watcher.Error += Notice;
            watcher.EnableRaisingEvents = true;
            return watcher;
        }
        catch (Exception e) when (e is IOException or ArgumentException or UnauthorizedAccessException)
        {
            // The system gives no notices here: the folder is looked at now and then.
            return null;
        }
    }

    private void Notice(object sender, EventArgs e) => _notices.Writer.TryWrite(true);
}
