using RebuildApi.PluginHost.Loading;
using RebuildApi.PluginHost.Trust;

namespace RebuildApi.PluginHost.Workers;

/// <summary>
/// A plug-in's code in a worker process of its own. One runs only while there is code to run: it is ended after the families were declared, started again for
/// the first hook, kept for the next one, and replaced when it has ended.
/// </summary>
internal sealed class WorkerCode(WorkerLauncher launcher, DeclarationCache cache, PluginFiles files, ShadowCopy copy, TimeSpan loadBudget)
    : IPluginCode
{
    private readonly Lock _one = new();
    private WorkerProcess? _worker;

    /// <inheritdoc/>
    public DeclaredBytes Declare(TimeSpan budget) => cache.GetOrAdd(files, () =>
    {
        using var worker = new WorkerProcess(launcher);
        return Load(worker, budget);
    });

    /// <inheritdoc/>
    public byte[] Judge(string hook, byte[] snapshot, TimeSpan budget)
    {
        lock (_one)
            return WorkerProtocol.ToAnswer(Worker().Ask(WorkerProtocol.Judge(hook, snapshot), budget));
    }

    /// <inheritdoc/>
    public byte[] Read(string fileName, byte[] utf8, TimeSpan budget)
    {
        lock (_one)
            return WorkerProtocol.ToAnswer(Worker().Ask(WorkerProtocol.Read(fileName, utf8), budget));
    }

    /// <inheritdoc/>
    public byte[] Write(byte[] family, TimeSpan budget)
    {
        lock (_one)
            return WorkerProtocol.ToAnswer(Worker().Ask(WorkerProtocol.Write(family), budget));
    }

    /// <inheritdoc/>
    public void Dispose()
    {
        lock (_one)
        {
            _worker?.Dispose();
            _worker = null;
        }

        copy.Dispose();
    }

    private WorkerProcess Worker()
    {
        if (_worker is { IsAlive: true })
            return _worker;
        _worker?.Dispose();
        _worker = null;
        var started = new WorkerProcess(launcher);
        try
        {
            Load(started, loadBudget);
        }
        catch (PluginFault)
        {
            started.Dispose();
            throw;
        }

        return _worker = started;
    }

    private DeclaredBytes Load(WorkerProcess worker, TimeSpan budget) =>
        WorkerProtocol.ToDeclared(worker.Ask(WorkerProtocol.Load(copy.FolderOf(files.Id), files.Sha256), budget));
}
