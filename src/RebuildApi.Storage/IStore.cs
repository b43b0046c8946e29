using System.Collections.Immutable;
using RebuildApi.Contracts;

namespace RebuildApi.Storage;

/// <summary>The shop's database. Reads see one consistent moment; writes are queued to one writer that commits several together.</summary>
/// <remarks>
/// Every method may throw <see cref="StorageUnavailableException"/>. Lists take a cursor that an earlier page gave as its
/// <see cref="Page{T}.Next"/>; one that no page gave is a <see cref="UnknownCursorException"/>.
/// </remarks>
public interface IStore : IAsyncDisposable
{
    /// <summary>
    /// Runs one change in one transaction with its idempotency key. A repeated key gives the first answer again, marked as replayed.
    /// </summary>
    /// <param name="request">Who asks.</param>
    /// <param name="work">
    /// The change; runs on the writer, must be quick and pure but for the session. Throwing undoes this change and nothing of anybody else's.
    /// </param>
    /// <param name="cancellation">Gives up a change that has not begun; one that has begun is carried through and answered.</param>
    /// <exception cref="IdempotencyKeyReusedException">The key belongs to another request.</exception>
    /// <exception cref="StorageUnavailableException">Nothing was acknowledged. Asking again with the same key is safe.</exception>
    Task<StoredAnswer> Write(WriteRequest request, Func<IWriteSession, StoredAnswer> work, CancellationToken cancellation);

    /// <summary>A unit, or null.</summary>
    ValueTask<Unit?> Unit(string id, CancellationToken cancellation);

    /// <summary>Units in the order of their ids.</summary>
    /// <param name="after">Cursor, or null to begin.</param>
    /// <param name="limit">At most how many, 1..1000.</param>
    /// <param name="stage">Only those at this stage; null for all.</param>
    /// <param name="cancellation">Gives up.</param>
    ValueTask<Page<Unit>> Units(string? after, int limit, string? stage, CancellationToken cancellation);

    /// <summary>Everything of a unit, or null.</summary>
    ValueTask<UnitFile?> File(string unit, CancellationToken cancellation);

    /// <summary>An instrument, or null.</summary>
    ValueTask<Instrument?> Instrument(string id, CancellationToken cancellation);

    /// <summary>Instruments in the order of their ids.</summary>
    ValueTask<Page<Instrument>> Instruments(string? after, int limit, CancellationToken cancellation);

    /// <summary>One part over all units of the shop, or null.</summary>
    ValueTask<PartFile?> Part(string component, CancellationToken cancellation);

    /// <summary>One of the shop's own records, or null.</summary>
    ValueTask<T?> Find<T>(string id, CancellationToken cancellation)
        where T : class, IShopRecord<T>;

    /// <summary>The shop's own records of one sort, in the order of their ids.</summary>
    /// <param name="wanted">Which of them.</param>
    /// <param name="after">Cursor, or null to begin.</param>
    /// <param name="limit">At most how many, 1..1000.</param>
    /// <param name="cancellation">Gives up.</param>
    ValueTask<Page<T>> Page<T>(ShopFilter wanted, string? after, int limit, CancellationToken cancellation)
        where T : class, IShopRecord<T>;

    /// <summary>All of the shop's own records of one sort, in the order in which they were last written.</summary>
    ValueTask<ImmutableArray<T>> All<T>(ShopFilter wanted, CancellationToken cancellation)
        where T : class, IShopRecord<T>;

    /// <summary>The one of the shop's own records that was written last, or null.</summary>
    ValueTask<T?> Newest<T>(ShopFilter wanted, CancellationToken cancellation)
        where T : class, IShopRecord<T>;

    /// <summary>The shop's own records that were written after a sequence number, in the order in which they were committed.</summary>
    ValueTask<ImmutableArray<Recorded<T>>> Newer<T>(long after, int limit, CancellationToken cancellation)
        where T : class, IShopRecord<T>;

    /// <summary>When each token was last used, as far as it was written down.</summary>
    ValueTask<ImmutableSortedDictionary<string, DateTimeOffset>> TokenUses(CancellationToken cancellation);

    /// <summary>Writes down when tokens were last used. Stands outside the chain and is no event.</summary>
    Task NoteTokenUses(IReadOnlyCollection<KeyValuePair<string, DateTimeOffset>> uses, CancellationToken cancellation);

    /// <summary>A kept judgement, or null.</summary>
    ValueTask<Judgement?> Judgement(string id, CancellationToken cancellation);

    /// <summary>The latest kept judgement of a unit, or null.</summary>
    /// <param name="unit">The unit.</param>
    /// <param name="purpose">Only those kept for this; null for any.</param>
    /// <param name="cancellation">Gives up.</param>
    ValueTask<Judgement?> LatestJudgement(string unit, string? purpose, CancellationToken cancellation);

    /// <summary>The kept judgements of a unit, oldest first, without their bodies.</summary>
    ValueTask<Page<JudgementKept>> Judgements(string unit, string? after, int limit, CancellationToken cancellation);

    /// <summary>The edition of the shop's policy that is in force; <see cref="PolicyEdition.First"/> until the shop says otherwise.</summary>
    ValueTask<PolicyEdition> Policy(CancellationToken cancellation);

    /// <summary>Every edition that was put in force, oldest first.</summary>
    ValueTask<Page<PolicyEdition>> Policies(string? after, int limit, CancellationToken cancellation);

    /// <summary>The calibrations of an instrument, in the order in which they were recorded.</summary>
    ValueTask<ImmutableArray<Calibration>> Calibrations(string instrument, CancellationToken cancellation);

    /// <summary>The gauge studies of an instrument, in the order in which they were recorded.</summary>
    ValueTask<ImmutableArray<GaugeStudyKept>> Studies(string instrument, CancellationToken cancellation);

    /// <summary>The units whose file shows something that an instrument read, in the order of their ids.</summary>
    ValueTask<ImmutableArray<string>> UnitsReadWith(string instrument, CancellationToken cancellation);

    /// <summary>Measurements that stand, over all units, in the order of their ids.</summary>
    /// <param name="component">Only those of this part; null for all.</param>
    /// <param name="after">Cursor, or null to begin.</param>
    /// <param name="limit">At most how many, 1..1000.</param>
    /// <param name="cancellation">Gives up.</param>
    ValueTask<Page<Measurement>> Measurements(string? component, string? after, int limit, CancellationToken cancellation);

    /// <summary>Comebacks that stand, in the order of their ids; of one unit, or of all.</summary>
    ValueTask<Page<Comeback>> Comebacks(string? unit, string? after, int limit, CancellationToken cancellation);

    /// <summary>What happened after a sequence number, in the order in which it was committed. 0 begins at the beginning.</summary>
    /// <param name="after">Last sequence number already seen.</param>
    /// <param name="limit">At most how many.</param>
    /// <param name="cancellation">Gives up.</param>
    ValueTask<ImmutableArray<StoreEvent>> Events(long after, int limit, CancellationToken cancellation);

    /// <summary>Everything that was ever recorded of a unit, superseded or not, oldest first; from after a sequence number.</summary>
    /// <param name="unit">The unit.</param>
    /// <param name="after">Last sequence number already seen; 0 begins at the beginning.</param>
    /// <param name="limit">At most how many.</param>
    /// <param name="cancellation">Gives up.</param>
    ValueTask<ImmutableArray<HistoryEntry>> History(string unit, long after, int limit, CancellationToken cancellation);

    /// <summary>Waits until something has been committed after a sequence number; at once when something already was.</summary>
    /// <returns>The newest sequence number committed by this process, or read when it started.</returns>
    Task<long> NextEvent(long after, CancellationToken cancellation);

    /// <summary>How far a receiver of webhooks has come, with the secrets that sign now; null when there is none.</summary>
    ValueTask<Outbox?> Outbox(string webhook, CancellationToken cancellation);

    /// <summary>The deliveries of a receiver that are remembered, in the order of their events.</summary>
    /// <param name="webhook">The receiver.</param>
    /// <param name="state">Only those that stand so; null for all.</param>
    /// <param name="after">Cursor, or null to begin.</param>
    /// <param name="limit">At most how many, 1..1000.</param>
    /// <param name="cancellation">Gives up.</param>
    ValueTask<Page<Delivery>> Deliveries(string webhook, DeliveryState? state, string? after, int limit, CancellationToken cancellation);

    /// <summary>The delivery of one event to a receiver, or null.</summary>
    ValueTask<Delivery?> Delivery(string webhook, long sequence, CancellationToken cancellation);

    /// <summary>Whether other copies of the service may work on the same records.</summary>
    bool IsShared { get; }

    /// <summary>
    /// Takes up a duty that only one of the copies of the service may have at a time, such as sending webhooks; waits while another has it. Ended by
    /// disposing, and for the next one to take up when this copy or its connection dies.
    /// </summary>
    Task<IDuty> TakeUp(string duty, CancellationToken cancellation);

    /// <summary>Whether it can be written now, and why not. Commits a probe, so that a full disk shows.</summary>
    ValueTask<StoreHealth> Health(CancellationToken cancellation);

    /// <summary>The entries of the hash chain after a sequence number, in its order.</summary>
    /// <param name="wanted">Which of them.</param>
    /// <param name="after">Last sequence number already seen; 0 begins at the beginning.</param>
    /// <param name="limit">At most how many.</param>
    /// <param name="cancellation">Gives up.</param>
    ValueTask<ImmutableArray<AuditEntry>> Audit(AuditFilter wanted, long after, int limit, CancellationToken cancellation);

    /// <summary>One entry of the hash chain with everything that its hash is made of, or null.</summary>
    ValueTask<AuditRecord?> AuditRecord(long sequence, CancellationToken cancellation);

    /// <summary>The act of one sort that was recorded last, or null.</summary>
    ValueTask<Act?> NewestAct(string kind, CancellationToken cancellation);

    /// <summary>Every customer that a unit names, or once did, in the order of their names.</summary>
    ValueTask<ImmutableArray<CustomerSeen>> Customers(CancellationToken cancellation);

    /// <summary>The units that name a customer, or once did, in the order in which they were taken in.</summary>
    ValueTask<ImmutableArray<string>> UnitsOfCustomer(string customer, CancellationToken cancellation);

    /// <summary>The other shops of the same database that have opened something to this one, in the order of their names.</summary>
    ValueTask<ImmutableArray<OpenedShop>> OpenedShops(CancellationToken cancellation);

    /// <summary>What lies on the shelf of another shop.</summary>
    /// <param name="shop">Which.</param>
    /// <param name="about">Only what is found by this; null for all.</param>
    /// <param name="after">Cursor, or null to begin.</param>
    /// <param name="limit">At most how many, 1..1000.</param>
    /// <param name="cancellation">Gives up.</param>
    /// <exception cref="ShopNotOpenedException">It has not opened that to this one, or is not there.</exception>
    ValueTask<OpenedStock> StockOf(string shop, string? about, string? after, int limit, CancellationToken cancellation);

    /// <summary>The units of another shop in the order of their ids, without what names a customer.</summary>
    /// <exception cref="ShopNotOpenedException">It has not opened that to this one, or is not there.</exception>
    ValueTask<Page<Unit>> UnitsOf(string shop, string? after, int limit, string? stage, CancellationToken cancellation);

    /// <summary>A unit of another shop with its latest kept judgement, without what names a customer; null when there is none.</summary>
    /// <exception cref="ShopNotOpenedException">It has not opened that to this one, or is not there.</exception>
    ValueTask<OpenedUnit?> UnitOf(string shop, string unit, CancellationToken cancellation);

    /// <summary>
    /// Counts one more try of somebody, over all copies of the service that share the records. Where one process has them, nothing is counted here.
    /// </summary>
    /// <returns>How long it is until they may try again; zero when they may now.</returns>
    ValueTask<TimeSpan> CountTry(string who, TryLimit limit, CancellationToken cancellation);

    /// <summary>Where the hash chain ends now. Note it outside: it shows later whether anything before it was rewritten.</summary>
    ValueTask<ChainEnd> Head(CancellationToken cancellation);

    /// <summary>Walks the hash chain, and checks that the tables say what it says.</summary>
    ValueTask<ChainReport> VerifyChain(CancellationToken cancellation);

    /// <summary>The same; also says where a head that was noted earlier stands, and tells how far the walk has come.</summary>
    ValueTask<ChainReport> VerifyChain(ChainQuestion question, CancellationToken cancellation);

    /// <summary>Copies the database to a new file while it is in use, and verifies the copy.</summary>
    /// <exception cref="IOException">The file exists already, or can't be written.</exception>
    ValueTask<BackupReport> Backup(string path, CancellationToken cancellation);

    /// <summary>Opens a copy for reading only and checks it: engine's own check, row counts and hash chain.</summary>
    ValueTask<BackupReport> VerifyBackup(string path, CancellationToken cancellation);
}
