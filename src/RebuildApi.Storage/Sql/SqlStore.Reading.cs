using System.Collections.Immutable;
using RebuildApi.Contracts;

namespace RebuildApi.Storage.Sql;

/// <content>Everything that is only asked.</content>
public abstract partial class SqlStore
{
    /// <inheritdoc/>
    public ValueTask<Unit?> Unit(string id, CancellationToken cancellation) =>
        Read(c => new UnitQueries(c, _shop).Unit(id), cancellation);

    /// <inheritdoc/>
    public ValueTask<PartFile?> Part(string component, CancellationToken cancellation) =>
        Read(c => new PartQueries(c, _shop).Of(component), cancellation);

    /// <inheritdoc/>
    public ValueTask<Page<Unit>> Units(string? after, int limit, string? stage, CancellationToken cancellation) =>
        Read(c => new UnitQueries(c, _shop).Units(after, limit, stage), cancellation);

    /// <inheritdoc/>
    public ValueTask<UnitFile?> File(string unit, CancellationToken cancellation) =>
        Read(c => new UnitQueries(c, _shop).File(unit), cancellation);

    /// <inheritdoc/>
    public ValueTask<Instrument?> Instrument(string id, CancellationToken cancellation) =>
        Read(c => new InstrumentQueries(c, _shop).Instrument(id), cancellation);

    /// <inheritdoc/>
    public ValueTask<Page<Instrument>> Instruments(string? after, int limit, CancellationToken cancellation) =>
        Read(c => new InstrumentQueries(c, _shop).Instruments(after, limit), cancellation);

    /// <inheritdoc/>
    public ValueTask<T?> Find<T>(string id, CancellationToken cancellation)
        where T : class, IShopRecord<T> => Read(c => new ShopQueries<T>(c, _shop).Find(id), cancellation);

    /// <inheritdoc/>
    public ValueTask<Page<T>> Page<T>(ShopFilter wanted, string? after, int limit, CancellationToken cancellation)
        where T : class, IShopRecord<T> => Read(c => new ShopQueries<T>(c, _shop).Page(wanted.Unit, wanted.About, after, limit), cancellation);

    /// <inheritdoc/>
    public ValueTask<ImmutableArray<T>> All<T>(ShopFilter wanted, CancellationToken cancellation)
        where T : class, IShopRecord<T> => Read(c => new ShopQueries<T>(c, _shop).All(wanted.Unit, wanted.About), cancellation);

    /// <inheritdoc/>
    public ValueTask<T?> Newest<T>(ShopFilter wanted, CancellationToken cancellation)
        where T : class, IShopRecord<T> => Read(c => new ShopQueries<T>(c, _shop).Newest(wanted.Unit, wanted.About), cancellation);

    /// <inheritdoc/>
    public ValueTask<ImmutableArray<Recorded<T>>> Newer<T>(long after, int limit, CancellationToken cancellation)
        where T : class, IShopRecord<T> => Read(c => new ShopQueries<T>(c, _shop).Newer(after, limit), cancellation);

    /// <inheritdoc/>
    public ValueTask<ImmutableSortedDictionary<string, DateTimeOffset>> TokenUses(CancellationToken cancellation) =>
        Read(c => Storage.Sql.TokenUses.Read(c, _shop), cancellation);

    /// <inheritdoc/>
    public ValueTask<Judgement?> Judgement(string id, CancellationToken cancellation) =>
        Read(c => new JudgementQueries(c, _shop).Judgement(id), cancellation);

    /// <inheritdoc/>
    public ValueTask<Judgement?> LatestJudgement(string unit, string? purpose, CancellationToken cancellation) =>
        Read(c => new JudgementQueries(c, _shop).Latest(unit, purpose), cancellation);

    /// <inheritdoc/>
    public ValueTask<Page<JudgementKept>> Judgements(string unit, string? after, int limit, CancellationToken cancellation) =>
        Read(c => new JudgementQueries(c, _shop).Judgements(unit, after, limit), cancellation);

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
        Read(c => EventQueries.Events(c, _shop, after, limit), cancellation);

    /// <inheritdoc/>
    public ValueTask<ImmutableArray<HistoryEntry>> History(string unit, long after, int limit, CancellationToken cancellation) =>
        Read(c => EventQueries.History(c, _shop, unit, after, limit), cancellation);

    /// <inheritdoc/>
    public ValueTask<Outbox?> Outbox(string webhook, CancellationToken cancellation) =>
        Read(c => new OutboxQueries(c, _shop).Outbox(webhook, _time.GetUtcNow()), cancellation);

    /// <inheritdoc/>
    public ValueTask<Page<Delivery>> Deliveries(string webhook, DeliveryState? state, string? after, int limit, CancellationToken cancellation) =>
        Read(c => new OutboxQueries(c, _shop).Page(webhook, state, after, limit), cancellation);

    /// <inheritdoc/>
    public ValueTask<Delivery?> Delivery(string webhook, long sequence, CancellationToken cancellation) =>
        Read(c => new OutboxQueries(c, _shop).Find(webhook, sequence), cancellation);

    /// <inheritdoc/>
    public ValueTask<ImmutableArray<AuditEntry>> Audit(AuditFilter wanted, long after, int limit, CancellationToken cancellation) =>
        Read(c => new AuditQueries(c, _shop).Entries(wanted, after, limit), cancellation);

    /// <inheritdoc/>
    public ValueTask<AuditRecord?> AuditRecord(long sequence, CancellationToken cancellation) =>
        Read(c => new AuditQueries(c, _shop).Entry(sequence), cancellation);

    /// <inheritdoc/>
    public ValueTask<Act?> NewestAct(string kind, CancellationToken cancellation) =>
        Read(c => new AuditQueries(c, _shop).NewestAct(kind), cancellation);

    /// <inheritdoc/>
    public ValueTask<ImmutableArray<CustomerSeen>> Customers(CancellationToken cancellation) =>
        Read(c => new CustomerQueries(c, _shop).All(), cancellation);

    /// <inheritdoc/>
    public ValueTask<ImmutableArray<string>> UnitsOfCustomer(string customer, CancellationToken cancellation) =>
        Read(c => new CustomerQueries(c, _shop).UnitsOf(customer), cancellation);

    /// <inheritdoc/>
    public ValueTask<ChainEnd> Head(CancellationToken cancellation) => Read(
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
        Read(c => new ChainWalk(c, _shop).Verify(question, cancellation), cancellation);

    /// <inheritdoc/>
    public ValueTask<ImmutableArray<OpenedShop>> OpenedShops(CancellationToken cancellation) => Read(c => OpenedQueries.To(c, _shop), cancellation);

    /// <inheritdoc/>
    public ValueTask<OpenedStock> StockOf(string shop, string? about, string? after, int limit, CancellationToken cancellation) =>
        ReadOpened(shop, Opening.Stock, q => q.Stock(about, after, limit), cancellation);

    /// <inheritdoc/>
    public ValueTask<Page<Unit>> UnitsOf(string shop, string? after, int limit, string? stage, CancellationToken cancellation) =>
        ReadOpened(shop, Opening.Units, q => q.Page(after, limit, stage), cancellation);

    /// <inheritdoc/>
    public ValueTask<OpenedUnit?> UnitOf(string shop, string unit, CancellationToken cancellation) =>
        ReadOpened(shop, Opening.Units, q => q.Unit(unit), cancellation);

    // Held against what the shop opens in the same moment as the reading, so that taking it back counts at once.
    private ValueTask<T> ReadOpened<T>(string shop, Opening what, Func<OpenedQueries, T> ask, CancellationToken cancellation) => Read(
        c =>
        {
            if (!OpenedQueries.Opens(c, shop, what, _shop))
                throw new ShopNotOpenedException(shop);
            Want(c, shop);
            return ask(new OpenedQueries(c, shop));
        },
        cancellation);

    private ValueTask<T> Metrology<T>(Func<MetrologyQueries, T> ask, CancellationToken cancellation) =>
        Read(c => ask(new MetrologyQueries(c, _shop)), cancellation);
}
