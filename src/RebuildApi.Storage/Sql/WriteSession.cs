using System.Collections.Immutable;
using System.Globalization;
using System.Text.Json;
using System.Text.Json.Serialization.Metadata;
using RebuildApi.Contracts;
using RebuildApi.Storage.Sql.Personal;

namespace RebuildApi.Storage.Sql;

/// <summary>One change in the writer's transaction. Every table row points to the entry of the chain that holds its body.</summary>
internal sealed class WriteSession(Statements statements, string shop, ChainWriter chain, WriteRequest request) : IWriteSession
{
    private readonly UnitQueries _units = new(statements.Connection, shop);
    private readonly InstrumentQueries _instruments = new(statements.Connection, shop);
    private readonly PartRows _parts = new(statements, shop);
    private readonly AppendOnlyRows _rows = new(statements, shop);
    private readonly ShopRows _shopRows = new(statements, shop);
    private readonly MetrologyQueries _metrology = new(statements.Connection, shop);
    private readonly MetrologyRows _metrologyRows = new(statements, shop);

    public IOutboxSession Outboxes => new OutboxRows(statements, shop, chain);

    public Unit? Unit(string id) => _units.Unit(id);

    public UnitFile? File(string id) => _units.File(id);

    public Component? Component(string id) => _units.Component(id);

    public Instrument? Instrument(string id) => _instruments.Instrument(id);

    public ImmutableArray<Calibration> Calibrations(string instrument) => _metrology.Calibrations(instrument);

    public ImmutableArray<GaugeStudyKept> Studies(string instrument) => _metrology.Studies(instrument);

    public PolicyEdition Policy() => _metrology.Policy();

    public Unit Open(Unit unit)
    {
        if (Unit(unit.Id) is not null)
            throw new DuplicateIdException("unit", unit.Id);
        var opened = unit with { Version = 1 };
        var entry = Append("unit", unit.Id, unit.Id, opened, StoreJson.Default.Unit);
        statements.Run(
            "INSERT INTO unit (shop, id, stage, version, entry) VALUES (@shop, @id, @stage, 1, @entry)",
            ("shop", shop), ("id", unit.Id), ("stage", unit.Stage), ("entry", entry));
        return opened;
    }

    public Unit Change(Unit unit, long? expected)
    {
        var stands = Unit(unit.Id) ?? throw new UnknownIdException("unit", unit.Id);
        Expect("unit", unit.Id, expected, stands.Version);
        var changed = unit with { Opened = stands.Opened, OpenedBy = stands.OpenedBy, Version = stands.Version + 1 };
        var entry = Append("unit", unit.Id, unit.Id, changed, StoreJson.Default.Unit);
        statements.Run(
            "UPDATE unit SET stage = @stage, version = @version, entry = @entry WHERE shop = @shop AND id = @id",
            ("shop", shop), ("id", unit.Id), ("stage", changed.Stage), ("version", changed.Version), ("entry", entry));
        return changed;
    }

    public void Add(string unit, Component component)
    {
        _parts.CheckRevision(component);
        RaiseAll(unit, component.Id, component.Id, "component");
        _parts.Insert(unit, component, Append("component", unit, component.Id, component, StoreJson.Default.Component));
    }

    public void Place(string unit, Placement placement)
    {
        _parts.CheckPlace(unit, placement);
        Raise(unit);
        var id = PlaceId(placement.Position, placement.Index, placement.Role);
        _parts.Upsert(unit, placement, Append("placement", unit, id, placement, StoreJson.Default.Placement));
    }

    public string? UnitOf(string component) => _parts.UnitOf(component);

    public void Vacate(string unit, string position, int index, PlacementRole role)
    {
        if (!_parts.Delete(unit, position, index, role))
            return;
        Raise(unit);
        chain.Append(request, "vacancy", unit, PlaceId(position, index, role), "");
    }

    public void Add(string unit, Measurement measurement)
    {
        _rows.CheckNew(AppendOnly.Measurement, unit, measurement.Id, measurement.Supersedes);
        _parts.CheckKnown(measurement.Component, measurement.Revision);
        RaiseAll(unit, measurement.Component, measurement.Id, "measurement");
        _rows.Insert(unit, measurement, Append("measurement", unit, measurement.Id, measurement, StoreJson.Default.Measurement));
    }

    public void Add(string unit, TrialAssembly trial)
    {
        _rows.CheckNew(AppendOnly.Trial, unit, trial.Id, trial.Supersedes);
        Raise(unit);
        _rows.Insert(unit, trial, Append("trial", unit, trial.Id, trial, StoreJson.Default.TrialAssembly));
    }

    public void Add(string unit, Finding finding)
    {
        _rows.CheckNew(AppendOnly.Finding, unit, finding.Id, finding.Supersedes);
        _parts.CheckKnown(finding.Component, finding.Revision);
        RaiseAll(unit, finding.Component, finding.Id, "finding");
        _rows.Insert(unit, finding, Append("finding", unit, finding.Id, finding, StoreJson.Default.Finding));
    }

    public void Add(string unit, Decision decision)
    {
        _rows.CheckNew(AppendOnly.Decision, unit, decision.Id, decision.Supersedes);
        Raise(unit);
        _rows.Insert(unit, decision, Append("decision", unit, decision.Id, decision, StoreJson.Default.Decision));
    }

    public Instrument Put(Instrument instrument, long? expected)
    {
        var id = instrument.State.Id;
        var version = Instrument(id)?.Version ?? 0;
        Expect("instrument", id, expected, version);
        var put = instrument with { Version = version + 1 };
        var entry = Append("instrument", "", id, put, StoreJson.Default.Instrument);
        statements.Run(
            """
            INSERT INTO instrument (shop, id, version, entry) VALUES (@shop, @id, @version, @entry)
            ON CONFLICT (shop, id) DO UPDATE SET version = @version, entry = @entry
            """,
            ("shop", shop), ("id", id), ("version", put.Version), ("entry", entry));
        return put;
    }

    public T? Find<T>(string id)
        where T : class, IShopRecord<T> => new ShopQueries<T>(statements.Connection, shop).Find(id);

    public ImmutableArray<T> All<T>(string? unit = null, string? about = null)
        where T : class, IShopRecord<T> => new ShopQueries<T>(statements.Connection, shop).All(unit, about);

    public T? Newest<T>(string? unit = null, string? about = null)
        where T : class, IShopRecord<T> => new ShopQueries<T>(statements.Connection, shop).Newest(unit, about);

    public T Put<T>(T value, long? expected)
        where T : class, IShopRecord<T>
    {
        var version = _shopRows.Version<T>(value.Id);
        if (version > 0 && !T.Table.IsEdited)
            throw new DuplicateIdException(T.Table.Kind, value.Id);
        Expect(T.Table.Kind, value.Id, expected, version);
        if (value.OfUnit is { } unit && Unit(unit) is null)
            throw new UnknownIdException("unit", unit);
        var put = value.At(version + 1);
        var entry = Append(T.Table.Kind, put.OfUnit ?? "", put.Id, put, T.Table.Shape);
        if (version == 0)
            _shopRows.Insert(put, entry);
        else
            _shopRows.Update(put, entry);
        return put;
    }

    public void Add(Calibration calibration)
    {
        RequireInstrument(calibration.Instrument);
        _metrologyRows.CheckNew("calibration", calibration.Id);
        _metrologyRows.Insert(calibration, Append("calibration", "", calibration.Id, calibration, StoreJson.Default.Calibration));
    }

    public void Add(GaugeStudyKept study)
    {
        RequireInstrument(study.Instrument);
        _metrologyRows.CheckNew("study", study.Id);
        _metrologyRows.Insert(study, Append("study", "", study.Id, study, StoreJson.Default.GaugeStudyKept));
    }

    public void Add(Comeback comeback)
    {
        _rows.CheckNew(AppendOnly.Comeback, comeback.Unit, comeback.Id, comeback.Supersedes);
        Raise(comeback.Unit);
        _metrologyRows.Insert(comeback, Append("comeback", comeback.Unit, comeback.Id, comeback, StoreJson.Default.Comeback));
    }

    public PolicyEdition Put(PolicyEdition policy, long? expected)
    {
        var stands = Policy().Number;
        Expect("policy", "policy", expected, stands);
        var number = stands + 1;
        var put = policy with { Number = number, Policy = policy.Policy with { Version = number.ToString(CultureInfo.InvariantCulture) } };
        _metrologyRows.Insert(put, Append("policy", "", MetrologyRows.IdOf(put), put, StoreJson.Default.PolicyEdition));
        return put;
    }

    public ErasureDone Erase(ErasureOrder order)
    {
        var eraser = new Eraser(statements, shop);
        var gone = eraser.Find(order);
        var files = order.Files ? Files(order.Unit) : [];
        if (gone.IsEmpty && files.IsEmpty)
            return new ErasureDone(null, Mentions(eraser, order));
        Raise(order.Unit);
        var done = Put(new Erasure(order.Id, order.Unit, order.Person, chain.Now, [.. gone.Select(g => g.Erased)], files), 0);
        eraser.Erase(order.Unit, gone, chain.Head.Sequence);
        return new ErasureDone(done, Mentions(eraser, order));
    }

    /// <summary>Erases again what an earlier erasure named, where a restored copy brought it back.</summary>
    /// <returns>In how many entries.</returns>
    public int EraseAgain(Erasure earlier)
    {
        if (Find<Erasure>(earlier.Id) is not null || Unit(earlier.Unit) is null)
            return 0;
        var eraser = new Eraser(statements, shop);
        var gone = eraser.Find(earlier);
        Raise(earlier.Unit);
        Put(earlier with { Entries = [.. gone.Select(g => g.Erased)] }, 0);
        eraser.Erase(earlier.Unit, gone, chain.Head.Sequence);
        return gone.Length;
    }

    public long Record(Act act) => Append(act.Kind, "", act.Subject, act, StoreJson.Default.Act);

    public string KeepJudgement(
        string unit, string inputsSha256, string declarationSha256, string purpose, ReadOnlyMemory<byte> snapshot, ReadOnlyMemory<byte> judgement)
    {
        if (Unit(unit) is null)
            throw new UnknownIdException("unit", unit);
        var rows = new JudgementRows(statements, shop);
        var kept = new JudgementKept(
            JudgementRows.Id(chain.Head.Sequence + 1), unit, purpose, inputsSha256, declarationSha256,
            rows.Content(snapshot), rows.Content(judgement), chain.Now, request.Actor);
        rows.Insert(kept, Append("judgement", unit, kept.Id, kept, StoreJson.Default.JudgementKept));
        return kept.Id;
    }

    /// <summary>Takes some room and gives it back: a full disk shows here before a reading meets it.</summary>
    public void Probe()
    {
        const string write = "INSERT INTO probe (shop, body) VALUES (@shop, @body) ON CONFLICT (shop) DO UPDATE SET body = @body";
        statements.Run(write, ("shop", shop), ("body", new byte[16384]));
        statements.Run(write, ("shop", shop), ("body", Array.Empty<byte>()));
    }

    /// <summary>Writes down when tokens were last used.</summary>
    public void Note(IEnumerable<KeyValuePair<string, DateTimeOffset>> uses) => TokenUses.Write(statements, shop, uses);

    private void RequireInstrument(string id)
    {
        if (Instrument(id) is null)
            throw new UnknownIdException("instrument", id);
    }

    private static string PlaceId(string position, int index, PlacementRole role) =>
        FormattableString.Invariant($"{position}/{index}/{PartRows.Word(role)}");

    private static void Expect(string kind, string id, long? expected, long actual)
    {
        if (expected is { } version && version != actual)
            throw new VersionConflictException(kind, id, version, actual);
    }

    private long Append<T>(string kind, string unit, string id, T value, JsonTypeInfo<T> shape)
    {
        var (body, personal) = PersonalBody.Close(kind, JsonSerializer.Serialize(value, shape));
        var entry = chain.Append(request, kind, unit, id, body);
        if (personal is not null)
            new PersonalRows(statements, shop).Insert(entry, personal);
        return entry;
    }

    // A file that another unit shows too stays.
    private ImmutableArray<string> Files(string unit)
    {
        var gone = All<Erasure>().SelectMany(e => e.Files).ToHashSet(StringComparer.Ordinal);
        var others = All<Attachment>().Where(a => a.Unit != unit).Select(a => a.Sha256).ToHashSet(StringComparer.Ordinal);
        return [.. All<Attachment>(unit).Select(a => a.Sha256).Distinct().Where(f => !others.Contains(f) && !gone.Contains(f))];
    }

    private ImmutableArray<StoreEvent> Mentions(Eraser eraser, ErasureOrder order) =>
        [.. eraser.Mentions(order).Select(e => new StoreEvent(e.Sequence, Stamp.Read(e.At), e.Actor, e.Kind, order.Unit, e.Id))];

    private void Raise(string unit)
    {
        var raised = statements.Run("UPDATE unit SET version = version + 1 WHERE shop = @shop AND id = @unit", ("shop", shop), ("unit", unit));
        if (raised == 0)
            throw new UnknownIdException("unit", unit);
    }

    /// <summary>Raises the unit, and any other whose file shows the part: a bench that looks at that one must see the change too.</summary>
    private void RaiseAll(string unit, string component, string id, string kind)
    {
        Raise(unit);
        foreach (var other in _parts.OtherUnits(unit, component))
        {
            Raise(other);
            chain.Append(request, kind + "-elsewhere", other, id, "");
        }
    }
}
