using System.Collections.Immutable;
using RebuildApi.PluginHost;
using RebuildApi.Server.Results;
using RebuildApi.Storage;

namespace RebuildApi.Server.Composition;

/// <summary>
/// Puts on record who approved, withdrew or reloaded a plug-in. An approval is in the chain before it takes effect; when what lies there turns out to have
/// another hash, the record still says what the person approved, and nothing was loaded.
/// </summary>
public static class PluginRecord
{
    /// <summary>Exactly these bytes are approved.</summary>
    public static Task Approval(IStore store, WriteRequest request, string plugin, string sha256, string person, CancellationToken cancellation) =>
        Put(store, request, new Act(Acts.PluginApproval, plugin, person, Details(("sha256", sha256))), cancellation);

    /// <summary>An approval is taken back; in the chain before the plug-in goes.</summary>
    public static Task Withdrawal(IStore store, WriteRequest request, string plugin, string sha256, string person, CancellationToken cancellation) =>
        Put(store, request, new Act(Acts.PluginWithdrawal, plugin, person, Details(("sha256", sha256))), cancellation);

    /// <summary>A plug-in was looked at again; what was found is known only afterwards.</summary>
    public static Task Reload(IStore store, WriteRequest request, PluginStatus found, CancellationToken cancellation) =>
        Put(store, request, new Act(Acts.PluginReload, found.Id, request.Actor, Details(("sha256", found.Sha256 ?? ""), ("state", Wire.Kebab.Of(found.State)))), cancellation);

    // These may be repeated by their nature, so a key is neither needed nor kept.
    private static Task Put(IStore store, WriteRequest request, Act act, CancellationToken cancellation) =>
        store.Write(request with { IdempotencyKey = null }, session =>
        {
            session.Record(act);
            return Answer.Changed(act.Subject);
        }, cancellation);

    private static ImmutableSortedDictionary<string, string> Details(params (string Name, string Value)[] details) =>
        details.ToImmutableSortedDictionary(d => d.Name, d => d.Value, StringComparer.Ordinal);
}
