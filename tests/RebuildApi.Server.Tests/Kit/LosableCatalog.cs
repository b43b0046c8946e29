using System.Collections.Immutable;
using RebuildApi.Contracts;
using RebuildApi.PluginHost;

namespace RebuildApi.Server.Tests.Kit;

/// <summary>The shipped plug-ins, until they are lost: from then on as if every folder were gone.</summary>
public sealed class LosableCatalog(IPluginCatalog real) : IPluginCatalog
{
    public bool Lost { get; set; }

    public ImmutableArray<PluginStatus> Plugins => Lost ? [] : real.Plugins;

    /// <summary>An edition that is loaded in place of the shipped one of the same id.</summary>
    public LoadedFamily? Newer { get; set; }

    public ImmutableArray<LoadedFamily> Families => Lost ? [] : [.. real.Families.Select(f => Newer is { } n && n.Family.Version.Id == f.Family.Version.Id ? n : f)];

    public LoadedFamily? Find(string familyId) => Families.FirstOrDefault(f => f.Family.Version.Id == familyId);

    public Task Watch(CancellationToken cancellation) => Task.CompletedTask;

    public HookAnswerResult RunHook(string familyId, HookScope scope, UnitSnapshot snapshot) => real.RunHook(familyId, scope, snapshot);

    public Task<PluginStatus> Reload(string id, CancellationToken cancellation) => real.Reload(id, cancellation);

    public Task<ImmutableArray<PluginStatus>> ReloadAll(CancellationToken cancellation) => real.ReloadAll(cancellation);

    public Task<PluginStatus> Approve(string id, string sha256, string who, CancellationToken cancellation) => real.Approve(id, sha256, who, cancellation);

    public ReadResult ReadFile(string fileName, byte[] utf8) => real.ReadFile(fileName, utf8);

    public byte[] WriteFile(Family family) => real.WriteFile(family);

    public event EventHandler<PluginStatus>? Changed
    {
        add => real.Changed += value;
        remove => real.Changed -= value;
    }
}
