using System.Collections.Immutable;
using RebuildApi.PluginHost.Catalog;

namespace RebuildApi.PluginHost;

/// <summary>
/// Takes up by itself what is dropped in, changed or removed. The system's own notices only say that it is time to look; where there are none the folders are
/// looked at now and then. What changed is taken up once it has stayed as it is from one look to the next, so that half a copy is waited for.
/// </summary>
public sealed class DropWatch
{
    private readonly PluginCatalog _catalog;
    private readonly DropLook _drop;
    private readonly WatchOptions _options;
    private readonly ImmutableArray<string> _folders;
    private ImmutableDictionary<string, string> _taken;
    private ImmutableDictionary<string, string> _before;

    internal DropWatch(PluginCatalog catalog, DropLook drop, ImmutableDictionary<string, string> opened, WatchOptions options, ImmutableArray<string> folders)
    {
        (_catalog, _drop, _options, _folders) = (catalog, drop, options, folders);
        _taken = _before = opened;
    }

    /// <summary>Watches until it is cancelled.</summary>
    public async Task Run(CancellationToken cancellation)
    {
        using var notices = new FolderNotices();
        try
        {
            while (true)
            {
                notices.Attach(_folders);
                if (await Look(cancellation))
                    await Task.Delay(_options.Settle, cancellation);
                else
                    await notices.Next(_options.Poll, cancellation);
            }
        }
        catch (OperationCanceledException) when (cancellation.IsCancellationRequested)
        {
            // The service ends.
        }
    }

    /// <summary>Looks once, and takes up what has changed and settled.</summary>
    /// <returns>Whether something has changed that still has to settle.</returns>
    public async Task<bool> Look(CancellationToken cancellation)
    {
        var now = _drop.Now();
        var changed = now.Keys.Union(_taken.Keys).Where(id => Differ(id, now, _taken)).Order(StringComparer.Ordinal).ToList();
        var settled = changed.Where(id => !Differ(id, now, _before)).ToList();
        _before = now;
        foreach (var id in settled)
        {
            await Retake(id, cancellation);
            _taken = now.TryGetValue(id, out var look) ? _taken.SetItem(id, look) : _taken.Remove(id);
        }

        return settled.Count < changed.Count;
    }

    private async Task Retake(string id, CancellationToken cancellation)
    {
        try
        {
            await _catalog.Reload(id, cancellation);
        }
        catch (PluginNotFoundException)
        {
            // It came and went between two looks.
        }
    }

    private static bool Differ(string id, ImmutableDictionary<string, string> a, ImmutableDictionary<string, string> b) =>
        a.GetValueOrDefault(id) != b.GetValueOrDefault(id);
}
