using RebuildApi.PluginHost;

namespace RebuildApi.Server;

/// <summary>Watches the folders of plug-ins and family files for as long as the service runs.</summary>
public sealed class DropWatching(IPluginCatalog catalog) : BackgroundService
{
    /// <inheritdoc/>
    protected override Task ExecuteAsync(CancellationToken stoppingToken) => Task.Run(() => catalog.Watch(stoppingToken), CancellationToken.None);
}
