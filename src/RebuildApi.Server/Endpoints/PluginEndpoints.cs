using RebuildApi.PluginHost;
using RebuildApi.Server.Access;
using RebuildApi.Server.Composition;
using RebuildApi.Server.Errors;
using RebuildApi.Server.Requests;
using RebuildApi.Server.Results;
using RebuildApi.Server.Wire;
using RebuildApi.Storage;

namespace RebuildApi.Server.Endpoints;

/// <summary>The assemblies that bring families, and the families written as files.</summary>
public static class PluginEndpoints
{
    /// <summary>The routes. Approving and reloading may be repeated by their nature, so they take no idempotency key.</summary>
    public static void MapPlugins(this IEndpointRouteBuilder routes)
    {
        var group = routes.Resource("plugins");
        group.List<ListOf<PluginWire>>("/plugins", List, "listPlugins", "List plug-ins", "Every plug-in and every family file that was found, with its state and the reason for it.");
        group.Read("/plugins/{plugin}", Get, "getPlugin", "Get a plug-in", "One plug-in with its state and the reason for it.").Fails(Problems.UnknownPlugin);
        group.MapLater(HttpMethods.Post, "/plugins/{plugin}/approvals", Approve).WithName("approvePlugin").WithSummary("Approve a plug-in")
            .WithDescription("Approves exactly these bytes and loads them. An assembly is code: approve only what you would run yourself. A family file is data, but decides what the shop is told.")
            .Needs(Scope.Administrator).WithMetadata(QueryOption.DryRun)
            .Fails(Problems.UnknownPlugin, Problems.PluginRefused)
            .Example("""{ "sha256": "0000000000000000000000000000000000000000000000000000000000000000", "person": "Ada" }""");
        group.MapLater(HttpMethods.Post, "/plugins/{plugin}/reloads", Reload).WithName("reloadPlugin").WithSummary("Look at a plug-in again")
            .WithDescription("Takes up a new or changed assembly or family file, drops one that is gone.")
            .Needs(Scope.Administrator).WithMetadata(QueryOption.DryRun)
            .Fails(Problems.UnknownPlugin);
    }

    private static Listing<PluginWire, ListOf<PluginWire>> List(IPluginCatalog catalog) => new(
        PagesOf.Whole(catalog.Plugins, p => p.Id).Select(PluginWire.From),
        (items, next, asOf) => new(items, next, asOf));

    private static Found<PluginWire> Get(string plugin, IPluginCatalog catalog) => new(PluginWire.From(Require(catalog, plugin)));

    private static async Task<Found<PluginWire>> Approve(
        string plugin, Body<PluginApprovalRequest> body, IPluginCatalog catalog, IStore store, CancellationToken cancellation)
    {
        var status = Require(catalog, plugin);
        if (!body.Request.DryRun)
        {
            await PluginRecord.Approval(store, body.Request, plugin, body.Value.Sha256, body.Value.Person, cancellation);
            return new(PluginWire.From(await catalog.Approve(plugin, body.Value.Sha256, body.Value.Person, cancellation)));
        }

        return status.Sha256 == body.Value.Sha256 ? new(PluginWire.From(status)) : throw new PluginChangedException(plugin, status.Sha256 ?? "none");
    }

    private static async Task<Found<PluginWire>> Reload(string plugin, NoBody body, IPluginCatalog catalog, IStore store, CancellationToken cancellation)
    {
        if (body.Request.DryRun)
            return new(PluginWire.From(Require(catalog, plugin)));
        // A plug-in that was dropped in just now is not known yet: only the catalog can say that there is none.
        var status = await catalog.Reload(plugin, cancellation);
        await PluginRecord.Reload(store, body.Request, status, cancellation);
        return new(PluginWire.From(status));
    }

    private static PluginStatus Require(IPluginCatalog catalog, string plugin) =>
        catalog.Plugins.FirstOrDefault(p => p.Id == plugin) ?? throw new ProblemException(Problems.UnknownPlugin, "No plug-in folder and no family file has this name.");
}
