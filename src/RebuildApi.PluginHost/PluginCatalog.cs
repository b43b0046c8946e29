using System.Collections.Immutable;
using RebuildApi.Contracts;
using RebuildApi.PluginHost.Catalog;
using RebuildApi.PluginHost.Hooks;
using RebuildApi.PluginHost.Loading;
using RebuildApi.PluginHost.Trust;

namespace RebuildApi.PluginHost;

/// <summary>
/// Finds plug-ins, trusts those that an administrator approved, and keeps what they supply.
/// </summary>
/// <remarks>
/// <para>
/// What this protects against: code that nobody approved, files exchanged between the check and the load, a newer contract, and whatever a plug-in's
/// faults could cost others. With a worker command each plug-in's code runs in a process of its own, which is ended when it is late and started again when it
/// is needed; a loop, an exit, a stack overflow, a fault on a thread of its own or a hunger for memory costs that one answer. Families are data: they stand
/// whether or not a worker runs.
/// </para>
/// <para>
/// What it does not: approved code that means harm. A worker runs as the same user as the service and can read what that user can read, the shop's database
/// among it; where the system has no such means it can also reach the network, write files and leave processes behind. Each plug-in's status says how
/// far it is contained. Without a worker command nothing is. Approve only what you would run yourself.
/// </para>
/// </remarks>
public sealed class PluginCatalog : IPluginCatalog, IDisposable
{
    private const int TakenAtOnce = 4;
    private const int MostPlugins = 1000;
    private readonly PluginHostOptions _options;
    private readonly Approvals _approvals;
    private readonly ShadowFolder _shadow;
    private readonly PluginTaking _taking;
    private readonly FileTaking _files;
    private readonly DropLook _drop;
    private readonly ImmutableDictionary<string, string> _opened;
    private readonly SemaphoreSlim _changing = new(1, 1);
    private volatile CatalogView _view = CatalogView.Empty;

    private PluginCatalog(PluginHostOptions options)
    {
        _options = options;
        _approvals = new Approvals(options);
        _shadow = new ShadowFolder(options.ShadowFolder);
        var checking = new FamilyChecking(options);
        _taking = new PluginTaking(options, _approvals, _shadow, checking);
        _files = new FileTaking(options, _approvals, checking);
        _drop = new DropLook(this, options.Limits.Files);
        _opened = _drop.Now();
    }

    /// <summary>
    /// Takes up every plug-in that lies in the plug-in folders, in the order of their ids, and then every family file. One that fails stops no other.
    /// </summary>
    /// <exception cref="IOException">The shadow folder can't be made.</exception>
    public static PluginCatalog Open(PluginHostOptions options)
    {
        var catalog = new PluginCatalog(options);
        // Waiting on several at once, but taken up in order: who comes first keeps its families.
        foreach (var entry in catalog.Folders().ToList().AsParallel().AsOrdered().WithDegreeOfParallelism(TakenAtOnce).Select(catalog._taking.Take))
            catalog.Place(entry);
        catalog.RetakeFiles();
        return catalog;
    }

    /// <inheritdoc/>
    public event EventHandler<PluginStatus>? Changed;

    /// <inheritdoc/>
    public ImmutableArray<PluginStatus> Plugins => _view.Statuses;

    /// <inheritdoc/>
    public ImmutableArray<LoadedFamily> Families => _view.Families;

    /// <inheritdoc/>
    public LoadedFamily? Find(string familyId) => _view.Find(familyId)?.Family;

    /// <inheritdoc/>
    public HookAnswerResult RunHook(string familyId, HookScope scope, UnitSnapshot snapshot)
    {
        while (_view.Find(familyId) is { } found && found.Family.Family.Hooks.FirstOrDefault(h => h.Id == scope.Id) is { } declared)
        {
            // The scope that was declared counts, not the one that was handed over. A plug-in that was replaced just now gives no result: ask its successor.
            if (found.Entry.Running!.Door!.Run(found.Family, declared, snapshot) is { } result)
                return result;
        }

        return HookAnswerResult.None(HookReason.NotAvailable(familyId, scope.Id));
    }

    /// <inheritdoc/>
    public Task<PluginStatus> Reload(string id, CancellationToken cancellation) => Change(() => Retake(id), cancellation);

    /// <inheritdoc/>
    public async Task<ImmutableArray<PluginStatus>> ReloadAll(CancellationToken cancellation)
    {
        var ids = Dropped().Select(f => Path.GetFileName(f)).Union(Plugins.Select(p => p.Id), StringComparer.Ordinal);
        foreach (var id in ids.Order(StringComparer.Ordinal))
            await Reload(id, cancellation);
        return Plugins;
    }

    /// <inheritdoc/>
    public Task<PluginStatus> Approve(string id, string sha256, string who, CancellationToken cancellation) => Change(
        () =>
        {
            var found = HashOf(id);
            if (found is not null && found != sha256)
                throw new PluginChangedException(id, found);
            if (found is not null && !_approvals.Cover(id, found))
                _approvals.Add(id, found, who);
            return Retake(id);
        },
        cancellation);

    /// <summary>What notices changes in the folders since the catalog was opened.</summary>
    public DropWatch Watcher() => new(this, _drop, _opened, _options.Watch, [.. _options.PluginFolders, .. _options.FamilyFolders]);

    /// <inheritdoc/>
    public Task Watch(CancellationToken cancellation) => Watcher().Run(cancellation);

    /// <inheritdoc/>
    public ReadResult ReadFile(string fileName, byte[] utf8) => _files.Read(fileName, utf8, _view.Reader);

    /// <inheritdoc/>
    public byte[] WriteFile(Family family) => FileTaking.Write(family, _view.Reader);

    /// <summary>Lets go of every plug-in and of the shadow copies.</summary>
    public void Dispose()
    {
        var last = _view;
        _view = CatalogView.Empty;
        foreach (var entry in last.Entries)
            entry.Running?.Door?.Close();
        _shadow.Dispose();
        _changing.Dispose();
    }

    private async Task<PluginStatus> Change(Func<PluginEntry> change, CancellationToken cancellation)
    {
        await _changing.WaitAsync(cancellation);
        PluginStatus status;
        try
        {
            // Loading waits on foreign code; that must not hold up a thread that answers requests.
            status = await Task.Run(() => Put(change()), CancellationToken.None);
        }
        finally
        {
            _changing.Release();
        }

        Changed?.Invoke(this, status);
        return status;
    }

    private PluginEntry Retake(string id)
    {
        if (FolderOf(id) is { } folder)
            return _taking.Take(folder);
        if (_files.PathOf(id) is { } file)
            return _files.Take(file, _view.Reader);
        return _view.Status(id) is { } known
            ? PluginEntry.Idle(id, PluginState.Removed, FamilyFile.IsByName(id) ? "Its file is gone." : "Its folder is gone.", known.Sha256, known.ContractVersion, _options.Time.GetUtcNow())
            : throw new PluginNotFoundException(id);
    }

    private PluginStatus Put(PluginEntry entry)
    {
        var before = _view.Reader;
        Place(entry);
        if (_view.Reader != before)
            RetakeFiles();
        return _view.Status(entry.Status.Id)!;
    }

    private void Place(PluginEntry entry)
    {
        var replaced = _view.Entries.FirstOrDefault(e => e.Status.Id == entry.Status.Id);
        _view = _view.With(entry);
        replaced?.Running?.Door?.Close();
    }

    /// <summary>Another reader may read a file otherwise, so each is looked at again.</summary>
    private void RetakeFiles()
    {
        foreach (var file in _files.Paths().Where(f => FolderOf(Path.GetFileName(f)) is null))
            Place(_files.Take(file, _view.Reader));
    }

    /// <summary>The hash of what lies there, or null when it breaks a rule.</summary>
    private string? HashOf(string id)
    {
        if (FolderOf(id) is { } folder)
            return _taking.Look(folder)?.Sha256;
        return _files.PathOf(id) is { } file ? _files.Look(file)?.Sha256 : throw new PluginNotFoundException(id);
    }

    private string? FolderOf(string id) => Folders().FirstOrDefault(f => Path.GetFileName(f) == id);

    /// <summary>Everything that is looked at: the folders of plug-ins and the family files.</summary>
    internal IEnumerable<string> Dropped() => Folders().Concat(_files.Paths());

    private IEnumerable<string> Folders() => _options.PluginFolders
        .Where(Directory.Exists)
        .SelectMany(f => Directory.EnumerateDirectories(f).Take(MostPlugins))
        .DistinctBy(f => Path.GetFileName(f), StringComparer.Ordinal)
        .OrderBy(f => Path.GetFileName(f), StringComparer.Ordinal);
}
