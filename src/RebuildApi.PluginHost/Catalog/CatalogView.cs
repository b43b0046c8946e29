using System.Collections.Immutable;

namespace RebuildApi.PluginHost.Catalog;

/// <summary>All plug-ins at one moment. Of two families of one id, the one of the plug-in that was taken up first counts.</summary>
internal sealed class CatalogView
{
    private readonly ImmutableDictionary<string, (LoadedFamily Family, PluginEntry Entry)> _families;
    private readonly ImmutableArray<(PluginStatus Status, PluginEntry Entry)> _plugins;

    private CatalogView(
        ImmutableArray<PluginEntry> entries,
        ImmutableDictionary<string, (LoadedFamily, PluginEntry)> families,
        ImmutableArray<(PluginStatus, PluginEntry)> plugins) => (Entries, _families, _plugins) = (entries, families, plugins);

    /// <summary>No plug-ins.</summary>
    public static CatalogView Empty { get; } = Of([]);

    /// <summary>The plug-ins in the order in which they were taken up.</summary>
    public ImmutableArray<PluginEntry> Entries { get; }

    /// <summary>The families, by id.</summary>
    public ImmutableArray<LoadedFamily> Families =>
        [.. _families.Values.Select(f => f.Family).OrderBy(f => f.Family.Version.Id, StringComparer.Ordinal)];

    /// <summary>How each plug-in stands now.</summary>
    public ImmutableArray<PluginStatus> Statuses => [.. _plugins.Select(p => Now(p.Status, p.Entry))];

    /// <summary>A plug-in, or null.</summary>
    public PluginStatus? Status(string id) => Statuses.FirstOrDefault(s => s.Id == id);

    /// <summary>A family with the plug-in that supplies it, or null.</summary>
    public (LoadedFamily Family, PluginEntry Entry)? Find(string family) => _families.TryGetValue(family, out var found) ? found : null;

    /// <summary>The plug-in that reads family files, or null when none does.</summary>
    public PluginEntry? Reader => Entries.FirstOrDefault(e => e.Running is { Reads: true });

    /// <summary>The same plug-ins with one put in its place, or at the end when it is new.</summary>
    public CatalogView With(PluginEntry entry)
    {
        var old = Entries.FirstOrDefault(e => e.Status.Id == entry.Status.Id);
        return Of(old is null ? Entries.Add(entry) : Entries.Replace(old, entry));
    }

    private static CatalogView Of(ImmutableArray<PluginEntry> entries)
    {
        var families = ImmutableDictionary.CreateBuilder<string, (LoadedFamily, PluginEntry)>(StringComparer.Ordinal);
        var plugins = ImmutableArray.CreateBuilder<(PluginStatus, PluginEntry)>();
        foreach (var entry in entries)
            plugins.Add((Claim(entry, families), entry));
        return new CatalogView(entries, families.ToImmutable(), plugins.ToImmutable());
    }

    private static PluginStatus Claim(PluginEntry entry, ImmutableDictionary<string, (LoadedFamily Family, PluginEntry)>.Builder families)
    {
        if (entry.Running is not { } running)
            return entry.Status;
        var claimed = running.Families.Where(f => families.TryAdd(f.Family.Version.Id, (f, entry))).ToList();
        var refused = running.Families.Except(claimed).Select(f => Taken(f, families[f.Family.Version.Id].Family.Plugin));
        var status = entry.Status with
        {
            Families = [.. claimed.Select(f => f.Family.Version.Id)],
            RefusedFamilies = [.. entry.Status.RefusedFamilies, .. refused],
        };
        return status.RefusedFamilies.IsEmpty ? status : status with
        {
            State = claimed.Count > 0 ? PluginState.Loaded : PluginState.Refused,
            Reason = string.Join(" ", status.RefusedFamilies.Select(r => $"Family {r.Family} is not used: {r.Reason}")),
        };
    }

    private static RefusedFamily Taken(LoadedFamily family, string by)
    {
        var reason = by == family.Plugin ? "it is declared twice." : $"plug-in {by} supplies a family of that id already.";
        return new RefusedFamily(family.Family.Version.Id, reason, []);
    }

    private static PluginStatus Now(PluginStatus status, PluginEntry entry)
    {
        if (entry.Running?.Door is not { } door)
            return status;
        return door.IsSuspended && status.State == PluginState.Loaded
            ? status with { State = PluginState.Suspended, Faults = door.Faults, Reason = "Its rules in code kept failing and are left alone for a while." }
            : status with { Faults = door.Faults };
    }
}
