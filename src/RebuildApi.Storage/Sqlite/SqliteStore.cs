using System.Collections.Immutable;
using Dapper;
using Microsoft.Data.Sqlite;
using RebuildApi.Contracts;
using RebuildApi.Storage.Sql;

namespace RebuildApi.Storage.Sqlite;

/// <summary>The shop's database in one SQLite file: one connection that writes, pooled connections that read.</summary>
public sealed class SqliteStore : IStore
{
    private readonly SqliteFile _file;
    private readonly string _shop;
    private readonly SqliteConnection _connection;
    private readonly Readers _readers;
    private readonly Announcement _announcement;
    private readonly Writer _writer;

    private SqliteStore(SqliteFile file, SqliteConnection connection)
    {
        _file = file;
        _shop = file.Options.Shop;
        _connection = connection;
        _readers = new Readers(file);
        _announcement = new Announcement(ChainHead.Read(connection, _shop).Sequence);
        _writer = new Writer(new GroupCommit(connection, file.Options), _announcement, file.Options.GroupSize);
    }

    /// <summary>Opens a database, makes it when there is none, and brings it to the schema of this program after a copy of it.</summary>
    /// <exception cref="StorageUnavailableException">It must not or can't be opened; the code and the words say why.</exception>
    public static SqliteStore Open(StoreOptions options) => Open(options, Migration.Shipped());

    /// <summary>
    /// Puts a copy in the place of a database that no program has open, once the copy has verified. What stood there is kept beside it under
    /// the name <c>.replaced-</c> and the time.
    /// </summary>
    /// <param name="options">Where the database is.</param>
    /// <param name="copy">The copy.</param>
    /// <param name="dryRun">Whether everything is only checked.</param>
    /// <returns>What checking the copy found; nothing was touched unless it is verified.</returns>
    /// <exception cref="StorageUnavailableException"><c>locked</c>: a program has the database open.</exception>
    public static BackupReport Restore(StoreOptions options, string copy, bool dryRun) => new SqliteRestore(options).Restore(copy, dryRun);

    /// <summary>Fills a database that nobody uses yet, at the schema that what fills it fits, and brings it up to date afterwards.</summary>
    internal static T Fill<T>(StoreOptions options, int schema, Func<SqliteConnection, T> fill)
    {
        try
        {
            var (file, steps) = (new SqliteFile(options), Migration.Shipped());
            using var connection = file.OpenWriter();
            new Schema(connection, options.Time, steps).Check(schema, readOnly: false);
            Prepare(file, connection, [.. steps.Where(s => s.Number <= schema)]);
            var result = fill(connection);
            new Schema(connection, options.Time, steps).Upgrade();
            return result;
        }
        catch (SqliteException e)
        {
            throw SqliteFaults.Translate(e);
        }
    }

    /// <inheritdoc cref="Open(StoreOptions)"/>
    internal static SqliteStore Open(StoreOptions options, ImmutableArray<Migration> steps)
    {
        SqliteConnection? connection = null;
        try
        {
            RefuseAfterBrokenRestore(options);
            var file = new SqliteFile(options);
            connection = file.OpenWriter();
            Prepare(file, connection, steps);
            return new SqliteStore(file, connection);
        }
        catch (Exception e)
        {
            connection?.Dispose();
            if (e is SqliteException)
                throw SqliteFaults.Translate(e);
            throw;
        }
    }

    // Between putting the old file aside and the new one in its place there is none: an empty one made there would look like a shop that lost everything.
    private static void RefuseAfterBrokenRestore(StoreOptions options)
    {
        if (!System.IO.File.Exists(options.Path) && System.IO.File.Exists(options.Path + SqliteRestore.Arriving))
            throw new StorageUnavailableException("damaged", $"A restore was cut off: {options.Path} is missing and {options.Path}{SqliteRestore.Arriving} lies beside it. Run restore again.");
    }

    private ValueTask<T> Metrology<T>(Func<MetrologyQueries, T> ask, CancellationToken cancellation) =>
        _readers.Read(c => ask(new MetrologyQueries(c, _shop)), cancellation);

    // Everything that can refuse the file comes before anything is changed in it.
    private static void Prepare(SqliteFile file, SqliteConnection connection, ImmutableArray<Migration> steps)
    {
        SqliteVersion.Require(connection);
        FileCheck.Quick(connection);
        var schema = new Schema(connection, file.Options.Time, steps);
        schema.Check(Schema.NumberOf(connection), file.Options.ReadOnly);
        if (file.Options.ReadOnly)
            return;
        file.PrepareToWrite(connection);
        schema.Upgrade();
    }

    /// <inheritdoc/>
    public Task<StoredAnswer> Write(WriteRequest request, Func<IWriteSession, StoredAnswer> work, CancellationToken cancellation) =>
        _writer.Write(request, work, cancellation);

    /// <inheritdoc/>
    public ValueTask<Unit?> Unit(string id, CancellationToken cancellation) =>
        _readers.Read(c => new UnitQueries(c, _shop).Unit(id), cancellation);

    /// <inheritdoc/>
    public ValueTask<PartFile?> Part(string component, CancellationToken cancellation) =>
        _readers.Read(c => new PartQueries(c, _shop).Of(component), cancellation);

    /// <inheritdoc/>
    public ValueTask<Page<Unit>> Units(string? after, int limit, string? stage, CancellationToken cancellation) =>
        _readers.Read(c => new UnitQueries(c, _shop).Units(after, limit, stage), cancellation);

    /// <inheritdoc/>
    public ValueTask<UnitFile?> File(string unit, CancellationToken cancellation) =>
        _readers.Read(c => new UnitQueries(c, _shop).File(unit), cancellation);

    /// <inheritdoc/>
    public ValueTask<Instrument?> Instrument(string id, CancellationToken cancellation) =>
        _readers.Read(c => new InstrumentQueries(c, _shop).Instrument(id), cancellation);

    /// <inheritdoc/>
    public ValueTask<Page<Instrument>> Instruments(string? after, int limit, CancellationToken cancellation) =>
        _readers.Read(c => new InstrumentQueries(c, _shop).Instruments(after, limit), cancellation);

    /// <inheritdoc/>
    public ValueTask<T?> Find<T>(string id, CancellationToken cancellation)
        where T : class, IShopRecord<T> => _readers.Read(c => new ShopQueries<T>(c, _shop).Find(id), cancellation);

    /// <inheritdoc/>
    public ValueTask<Page<T>> Page<T>(ShopFilter wanted, string? after, int limit, CancellationToken cancellation)
        where T : class, IShopRecord<T> => _readers.Read(c => new ShopQueries<T>(c, _shop).Page(wanted.Unit, wanted.About, after, limit), cancellation);

    /// <inheritdoc/>
    public ValueTask<ImmutableArray<T>> All<T>(ShopFilter wanted, CancellationToken cancellation)
        where T : class, IShopRecord<T> => _readers.Read(c => new ShopQueries<T>(c, _shop).All(wanted.Unit, wanted.About), cancellation);

    /// <inheritdoc/>
    public ValueTask<T?> Newest<T>(ShopFilter wanted, CancellationToken cancellation)
        where T : class, IShopRecord<T> => _readers.Read(c => new ShopQueries<T>(c, _shop).Newest(wanted.Unit, wanted.About), cancellation);

    /// <inheritdoc/>
    public ValueTask<ImmutableArray<Recorded<T>>> Newer<T>(long after, int limit, CancellationToken cancellation)
        where T : class, IShopRecord<T> => _readers.Read(c => new ShopQueries<T>(c, _shop).Newer(after, limit), cancellation);

    /// <inheritdoc/>
    public ValueTask<ImmutableSortedDictionary<string, DateTimeOffset>> TokenUses(CancellationToken cancellation) =>
        _readers.Read(c => Sql.TokenUses.Read(c, _shop), cancellation);

    /// <inheritdoc/>
    public Task NoteTokenUses(IReadOnlyCollection<KeyValuePair<string, DateTimeOffset>> uses, CancellationToken cancellation) =>
        _writer.Write(Unrecorded.Request("token-use"), session => Unrecorded.Write(session, s => s.Note(uses)), cancellation);

    /// <inheritdoc/>
    public ValueTask<Judgement?> Judgement(string id, CancellationToken cancellation) =>
        _readers.Read(c => new JudgementQueries(c, _shop).Judgement(id), cancellation);

    /// <inheritdoc/>
    public ValueTask<Judgement?> LatestJudgement(string unit, string? purpose, CancellationToken cancellation) =>
        _readers.Read(c => new JudgementQueries(c, _shop).Latest(unit, purpose), cancellation);

    /// <inheritdoc/>
    public ValueTask<Page<JudgementKept>> Judgements(string unit, string? after, int limit, CancellationToken cancellation) =>
        _readers.Read(c => new JudgementQueries(c, _shop).Judgements(unit, after, limit), cancellation);

    /// <inheritdoc/>
    public ValueTask<PolicyEdition> Policy(CancellationToken cancellation) => Metrology(q => q.Policy(), cancellation);

    /// <inheritdoc/>
    public ValueTask<Page<PolicyEdition>> Policies(string? after, int limit, CancellationToken cancellation) =>
        Metrology(q => q.Policies(after, limit), cancellation);

    /// <inheritdoc/>
    public ValueTask<ImmutableArray<Calibration>> Calibrations(string instrument, CancellationToken cancellation) =>
        Metrology(q => q.Calibrations(instrument), cancellation);

    /// <inheritdoc/>
    public ValueTask<ImmutableArray<GaugeStudyKept>> Studies(string instrument, CancellationToken cancellation) =>
        Metrology(q => q.Studies(instrument), cancellation);

    /// <inheritdoc/>
    public ValueTask<ImmutableArray<string>> UnitsReadWith(string instrument, CancellationToken cancellation) =>
        Metrology(q => q.UnitsReadWith(instrument), cancellation);

    /// <inheritdoc/>
    public ValueTask<Page<Measurement>> Measurements(string? component, string? after, int limit, CancellationToken cancellation) =>
        Metrology(q => q.Measurements(component, after, limit), cancellation);

    /// <inheritdoc/>
    public ValueTask<Page<Comeback>> Comebacks(string? unit, string? after, int limit, CancellationToken cancellation) =>
        Metrology(q => q.Comebacks(unit, after, limit), cancellation);

    /// <inheritdoc/>
    public ValueTask<ImmutableArray<StoreEvent>> Events(long after, int limit, CancellationToken cancellation) =>
        _readers.Read(c => EventQueries.Events(c, _shop, after, limit), cancellation);

    /// <inheritdoc/>
    public ValueTask<ImmutableArray<HistoryEntry>> History(string unit, long after, int limit, CancellationToken cancellation) =>
        _readers.Read(c => EventQueries.History(c, _shop, unit, after, limit), cancellation);

    /// <inheritdoc/>
    public Task<long> NextEvent(long after, CancellationToken cancellation) => _announcement.After(after, cancellation);

    /// <inheritdoc/>
    public ValueTask<Outbox?> Outbox(string webhook, CancellationToken cancellation) =>
        _readers.Read(c => new OutboxQueries(c, _shop).Outbox(webhook, _file.Options.Time.GetUtcNow()), cancellation);

    /// <inheritdoc/>
    public ValueTask<Page<Delivery>> Deliveries(string webhook, DeliveryState? state, string? after, int limit, CancellationToken cancellation) =>
        _readers.Read(c => new OutboxQueries(c, _shop).Page(webhook, state, after, limit), cancellation);

    /// <inheritdoc/>
    public ValueTask<Delivery?> Delivery(string webhook, long sequence, CancellationToken cancellation) =>
        _readers.Read(c => new OutboxQueries(c, _shop).Find(webhook, sequence), cancellation);

    /// <inheritdoc/>
    public async ValueTask<StoreHealth> Health(CancellationToken cancellation)
    {
        var engine = $"SQLite {_connection.ServerVersion}";
        try
        {
            await _writer.Write(Unrecorded.Request("health"), session => Unrecorded.Write(session, s => s.Probe()), cancellation);
            return new StoreHealth(true, engine, null);
        }
        catch (StorageUnavailableException e)
        {
            return new StoreHealth(false, engine, $"{e.Code}: {e.Message}");
        }
    }

    /// <inheritdoc/>
    public ValueTask<ImmutableArray<AuditEntry>> Audit(AuditFilter wanted, long after, int limit, CancellationToken cancellation) =>
        _readers.Read(c => new AuditQueries(c, _shop).Entries(wanted, after, limit), cancellation);

    /// <inheritdoc/>
    public ValueTask<AuditRecord?> AuditRecord(long sequence, CancellationToken cancellation) =>
        _readers.Read(c => new AuditQueries(c, _shop).Entry(sequence), cancellation);

    /// <inheritdoc/>
    public ValueTask<Act?> NewestAct(string kind, CancellationToken cancellation) =>
        _readers.Read(c => new AuditQueries(c, _shop).NewestAct(kind), cancellation);

    /// <inheritdoc/>
    public ValueTask<ImmutableArray<CustomerSeen>> Customers(CancellationToken cancellation) =>
        _readers.Read(c => new CustomerQueries(c, _shop).All(), cancellation);

    /// <inheritdoc/>
    public ValueTask<ImmutableArray<string>> UnitsOfCustomer(string customer, CancellationToken cancellation) =>
        _readers.Read(c => new CustomerQueries(c, _shop).UnitsOf(customer), cancellation);

    /// <inheritdoc/>
    public ValueTask<ChainEnd> Head(CancellationToken cancellation) => _readers.Read(
        c =>
        {
            var head = ChainHead.Read(c, _shop);
            return new ChainEnd(head.Sequence, head.Hash);
        },
        cancellation);

    /// <inheritdoc/>
    public ValueTask<ChainReport> VerifyChain(CancellationToken cancellation) => VerifyChain(ChainQuestion.Plain, cancellation);

    /// <inheritdoc/>
    public ValueTask<ChainReport> VerifyChain(ChainQuestion question, CancellationToken cancellation) =>
        _readers.Read(c => new ChainWalk(c, _shop).Verify(question, cancellation), cancellation);

    /// <inheritdoc/>
    public ValueTask<BackupReport> Backup(string path, CancellationToken cancellation)
    {
        using var connection = _file.OpenReader();
        return ValueTask.FromResult(new SqliteCopy(_shop).Make(connection, path, cancellation));
    }

    /// <inheritdoc/>
    public ValueTask<BackupReport> VerifyBackup(string path, CancellationToken cancellation) =>
        ValueTask.FromResult(new SqliteCopy(_shop).Verify(path, cancellation));

    /// <inheritdoc/>
    public async ValueTask DisposeAsync()
    {
        await _writer.DisposeAsync();
        await _connection.DisposeAsync();
        _file.Close();
    }
}
