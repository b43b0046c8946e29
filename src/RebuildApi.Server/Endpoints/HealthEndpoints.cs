using RebuildApi.PluginHost;
using RebuildApi.Server.Access;
using RebuildApi.Server.Backups;
using RebuildApi.Server.Errors;
using RebuildApi.Server.Requests;
using RebuildApi.Server.Results;
using RebuildApi.Server.Wire;
using RebuildApi.Storage;

namespace RebuildApi.Server.Endpoints;

/// <summary>Whether the service runs, and whether it can do its work.</summary>
public static class HealthEndpoints
{
    /// <summary>The routes.</summary>
    public static void MapHealth(this IEndpointRouteBuilder routes)
    {
        var group = routes.MapGroup("/health").WithTags("service").WithMetadata(new Strict());
        group.Read("/live", Live, "getLive", "Whether the process answers", "Answers as long as the process runs; says nothing of its records.")
            .Open(Watched).DisableRequestTimeout();
        group.Read("/ready", Ready, "getReady", "Whether it can do its work", "Writes a probe to the records and looks at each plug-in; 503 when records can't be written.")
            .Open(Watched).Fails(Problems.StorageUnavailable, Problems.Timeout);
    }

    private const string Watched = "whatever watches the service must be able to ask without a secret; it hears whether records and plug-ins are well, nothing of the shop";

    // Benches go on without a backup, so a failed one does not make the service unready; it is said all the same.
    private static HealthCheckWire Backups(BackupDesk desk)
    {
        if (desk.Failed is { } failed)
            return new HealthCheckWire("backups", false, $"The last one failed: {failed.Reason}");
        var newest = desk.Shelf.List().FirstOrDefault(b => b.Verified);
        return new HealthCheckWire("backups", true, newest is null ? "There is none yet." : $"The newest is {newest.Name}.");
    }

    private static Found<HealthWire> Live() => new(new HealthWire("live", []));

    private static async Task<Found<HealthWire>> Ready(IStore store, IPluginCatalog plugins, BackupDesk backups, CancellationToken cancellation)
    {
        var health = await store.Health(cancellation);
        if (!health.Ready)
            throw new ProblemException(Problems.StorageUnavailable, health.Reason ?? "The records can't be written.");
        var checks = plugins.Plugins.Select(p => new HealthCheckWire("plugin/" + p.Id, p.State == PluginState.Loaded, p.Reason));
        return new(new HealthWire("ready", [new HealthCheckWire("records", true, health.Engine), Backups(backups), .. checks]));
    }
}
