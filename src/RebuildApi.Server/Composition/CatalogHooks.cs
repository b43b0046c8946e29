using System.Collections.Immutable;
using RebuildApi.Contracts;
using RebuildApi.Engine.Identity;
using RebuildApi.Engine.Judging;
using RebuildApi.Engine.Snapshots;
using RebuildApi.PluginHost;

namespace RebuildApi.Server.Composition;

/// <summary>Runs a family's rules in code through the plug-in host, and stamps what comes back with whose rules and whose inputs it was.</summary>
public sealed class CatalogHooks(IPluginCatalog catalog, FamilyIndex family) : IHooks
{
    /// <inheritdoc/>
    public ImmutableArray<PairingVerdict> Run(HookScope scope, UnitSnapshot snapshot)
    {
        var inputs = Canonical.Sha256(snapshot);
        var result = catalog.RunHook(family.Family.Version.Id, scope, snapshot);
        return
        [
            .. result.Verdicts.Select(v => v with { Rules = family.IdentityOf(v.Rule) with { HookSha256 = v.Rules.HookSha256, Plugin = v.Rules.Plugin }, InputsSha256 = inputs }),
            .. result.Dropped.Select(why => NotAssessed(scope, why, inputs)),
        ];
    }

    private PairingVerdict NotAssessed(HookScope scope, Reason why, string inputs) =>
        new(scope.Id, Compatibility.NotAssessed, Severity.Advisory, [why], [], [], family.IdentityOf(scope.Id), inputs);
}
