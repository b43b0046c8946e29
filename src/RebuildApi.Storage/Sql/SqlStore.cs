using System.Data.Common;

namespace RebuildApi.Storage.Sql;

/// <summary>
/// What a store does whatever its engine: one writer, and readings that each see one moment. An engine says how it reads and writes, and how a copy of
/// the shop is made.
/// </summary>
public abstract partial class SqlStore : IStore
{
    private readonly string _shop;
    private readonly TimeProvider _time;
    private readonly Announcement _announcement;
    private readonly Writer _writer;

    private protected SqlStore(StoreOptions options, IGroupWriter commit, Announcement announcement)
    {
        _shop = options.Shop;
        _time = options.Time;
        _announcement = announcement;
        _writer = new Writer(commit, announcement, options.GroupSize);
    }

    /// <summary>Name and version of the engine.</summary>
    private protected abstract string Engine { get; }

    /// <inheritdoc/>
    public Task<StoredAnswer> Write(WriteRequest request, Func<IWriteSession, StoredAnswer> work, CancellationToken cancellation) =>
        _writer.Write(request, work, cancellation);

    /// <inheritdoc/>
    public Task<long> NextEvent(long after, CancellationToken cancellation) => _announcement.After(after, cancellation);

    /// <inheritdoc/>
    public Task NoteTokenUses(IReadOnlyCollection<KeyValuePair<string, DateTimeOffset>> uses, CancellationToken cancellation) =>
        _writer.Write(Unrecorded.Request("token-use"), session => Unrecorded.Write(session, s => s.Note(uses)), cancellation);

    /// <inheritdoc/>
    public async ValueTask<StoreHealth> Health(CancellationToken cancellation)
    {
        try
        {
            await _writer.Write(Unrecorded.Request("health"), session => Unrecorded.Write(session, s => s.Probe()), cancellation);
            return new StoreHealth(true, Engine, null);
        }
        catch (StorageUnavailableException e)
        {
            return new StoreHealth(false, Engine, $"{e.Code}: {e.Message}");
        }
    }

    /// <inheritdoc/>
    public abstract bool IsShared { get; }

    /// <inheritdoc/>
    public virtual ValueTask<TimeSpan> CountTry(string who, TryLimit limit, CancellationToken cancellation) => ValueTask.FromResult(TimeSpan.Zero);

    /// <inheritdoc/>
    public abstract Task<IDuty> TakeUp(string duty, CancellationToken cancellation);

    /// <inheritdoc/>
    public abstract ValueTask<BackupReport> Backup(string path, CancellationToken cancellation);

    /// <inheritdoc/>
    public ValueTask<BackupReport> VerifyBackup(string path, CancellationToken cancellation) =>
        ValueTask.FromResult(new Sqlite.SqliteCopy(_shop).Verify(path, cancellation));

    /// <inheritdoc/>
    public async ValueTask DisposeAsync()
    {
        await _writer.DisposeAsync();
        await Close();
        GC.SuppressFinalize(this);
    }

    /// <summary>Says to the engine, inside a reading, that the rest of it wants the rows of another shop, as far as that has opened them.</summary>
    private protected virtual void Want(DbConnection connection, string shop)
    {
    }

    /// <summary>Asks something at one moment.</summary>
    private protected abstract ValueTask<T> Read<T>(Func<DbConnection, T> query, CancellationToken cancellation);

    /// <summary>Lets go of what the engine holds; the writer has ended.</summary>
    private protected abstract ValueTask Close();
}
