using System.CommandLine;
using RebuildApi.PluginHost;
using RebuildApi.Server.Composition;
using RebuildApi.Server.Wire;
using RebuildApi.Storage;

namespace RebuildApi.Server.Commands;

/// <summary><c>plugin</c>: how the plug-ins of a shop stand, and approving one, without the service.</summary>
public static class PluginCommand
{
    /// <summary>The command.</summary>
    public static Command Make() => new("plugin", "How the plug-ins of the shop stand, and approving one.")
    {
        MakeList(),
        MakeApprove(),
    };

    private static Command MakeList() =>
        ToldCommand.OnShop("list", "Lists every plug-in and family file with its state, its hash and the reason.", """
            Example:
              plugin list
            """, [],
            (shop, asked, _) => WithCatalog(shop, catalog => List(catalog, asked.InvocationConfiguration.Output)));

    private static Command MakeApprove()
    {
        var id = new Argument<string>("id") { Description = "The plug-in." };
        var sha256 = new Option<string>("--sha256") { Description = "The hash that you looked at, as plugin list prints it.", HelpName = "hash", Required = true };
        var person = new Option<string>("--person") { Description = "Who approves.", HelpName = "name", Required = true };
        return ToldCommand.OnShop("approve", "Approves exactly these bytes, on record in the shop's hash chain.", """
            A service that runs takes it up at its next start, or with
            POST /v1/plugins/(id)/reloads. An assembly is code: approve only what you would run yourself.

            Example:
              plugin approve my-family --sha256 9f86…0a08 --person Ada
            """, [id, sha256, person],
            (shop, asked, cancellation) => WithCatalog(shop, catalog => Approve(
                shop, catalog, asked.GetValue(id)!, asked.GetValue(sha256)!.ToLowerInvariant(), asked.GetValue(person)!, asked.InvocationConfiguration.Output, cancellation)));
    }

    private static async Task<int> List(PluginCatalog catalog, TextWriter output)
    {
        foreach (var plugin in catalog.Plugins)
            await output.WriteLineAsync($"{Kebab.Of(plugin.State),-16} {plugin.Id,-24} {plugin.Sha256 ?? "-"}  {plugin.Reason}");
        return catalog.Plugins.All(p => p.State == PluginState.Loaded) ? 0 : 1;
    }

    private static async Task<int> Approve(ShopFolder shop, PluginCatalog catalog, string id, string sha256, string person, TextWriter output, CancellationToken cancellation)
    {
        var status = catalog.Plugins.FirstOrDefault(p => p.Id == id) ?? throw new PluginNotFoundException(id);
        if (status.Sha256 != sha256)
            throw new PluginChangedException(id, status.Sha256 ?? "none");
        await using (var store = shop.OpenToWrite())
            await PluginRecord.Approval(store, new WriteRequest(person, "plugin approve", null, "", DryRun: false), id, sha256, person, cancellation);
        var approved = await catalog.Approve(id, sha256, person, cancellation);
        await output.WriteLineAsync($"{id}: {Kebab.Of(approved.State)}. {approved.Reason}");
        return approved.State == PluginState.Loaded ? 0 : 1;
    }

    // A shadow folder of its own: the service, when it runs, loads from the other.
    private static async Task<int> WithCatalog(ShopFolder shop, Func<PluginCatalog, Task<int>> work)
    {
        var shadow = Directory.CreateTempSubdirectory("rebuild-plugin-");
        try
        {
            using var catalog = PluginCatalog.Open(Services.PluginsOf(shop.Settings, TimeProvider.System) with { ShadowFolder = shadow.FullName });
            return await work(catalog);
        }
        finally
        {
            shadow.Delete(recursive: true);
        }
    }
}
