namespace RebuildApi.Storage;

/// <summary>The shop's database. Reads see one consistent moment; writes are queued to one writer that commits several together.</summary>
public interface IStore : IAsyncDisposable
{
    /// <summary>
    /// Runs one change in one transaction with its idempotency key. A repeated key gives the first answer again, marked as replayed.
    /// </summary>
    /// <param name="request">Who asks.</param>
    /// <param name="work">The change; runs on the writer, must be quick and pure but for the session.</param>
    /// <param name="cancellation">Gives up waiting; once the work has begun it is carried through.</param>
    /// <exception cref="IdempotencyKeyReusedException">The key belongs to another request.</exception>
    /// <exception cref="StorageUnavailableException">Nothing was written.</exception>
    Task<StoredAnswer> Write(WriteRequest request, Func<IWriteSession, StoredAnswer> work, CancellationToken cancellation);

    /// <summary>A unit, or null.</summary>
    ValueTask<Unit?> Unit(string id, CancellationToken cancellation);

    /// <summary>Units in the order of their ids.</summary>
    ValueTask<Page<Unit>> Units(string? after, int limit, CancellationToken cancellation);

    /// <summary>Everything of a unit, or null.</summary>
    ValueTask<UnitFile?> File(string unit, CancellationToken cancellation);

    /// <summary>An instrument, or null.</summary>
    ValueTask<Instrument?> Instrument(string id, CancellationToken cancellation);

    /// <summary>Instruments in the order of their ids.</summary>
    ValueTask<Page<Instrument>> Instruments(string? after, int limit, CancellationToken cancellation);

    /// <summary>Whether it can be written now, and why not.</summary>
    ValueTask<StoreHealth> Health(CancellationToken cancellation);

    /// <summary>Walks the hash chain.</summary>
    ValueTask<ChainReport> VerifyChain(CancellationToken cancellation);
}

/// <summary>Whether the database can be used.</summary>
/// <param name="Ready">Whether a change would be taken.</param>
/// <param name="Engine">Engine and version.</param>
/// <param name="Reason">Why not, or none.</param>
public sealed record StoreHealth(bool Ready, string Engine, string? Reason);

/// <summary>What walking the chain found.</summary>
/// <param name="Entries">How many entries were walked.</param>
/// <param name="Head">Hash of the last.</param>
/// <param name="FirstBroken">Sequence number of the first entry that does not follow from the one before, or none.</param>
public sealed record ChainReport(long Entries, string Head, long? FirstBroken);
