using System.Collections.Immutable;
using System.Globalization;
using System.Text.Json;
using System.Text.Json.Serialization.Metadata;

namespace RebuildApi.Storage.Sql;

/// <summary>A table that is an index of the chain, and what its rows must say because of the entries they point to.</summary>
/// <param name="Name">Name of the table.</param>
/// <param name="Kind">Kind of the entries that its rows point to.</param>
/// <param name="Newest">Whether a later entry about the same thing replaces the row.</param>
/// <param name="Says">SQL for what a row <c>r</c> says, as one text.</param>
/// <param name="Expected">The same text from the entry.</param>
internal sealed record IndexedTable(string Name, string Kind, bool Newest, string Says, Func<IndexedEntry, string> Expected)
{
    private const string OfPart = "r.id || '|' || r.unit || '|' || r.component || '|' || r.revision || '|' || COALESCE(r.supersedes, '')";

    /// <summary>Every such table.</summary>
    public static readonly ImmutableArray<IndexedTable> All =
    [
        new("unit", "unit", true, "r.id || '|' || r.stage", Of(StoreJson.Default.Unit, (e, u) => Text(e.Id, UnitStages.Today(u.Stage)))),
        new("component", "component", false, "r.id || '|' || r.unit || '|' || r.revision",
            Of(StoreJson.Default.Component, (e, c) => Text(e.Id, e.Unit, c.Revision))),
        new("placement", "placement", true, "r.unit || '|' || r.position || '/' || r.place || '/' || r.role || '|' || r.component",
            Of(StoreJson.Default.Placement, (e, p) => Text(e.Unit, e.Id, p.Component))),
        new("measurement", "measurement", false, OfPart + " || '|' || r.characteristic || '|' || COALESCE(r.instrument, '')",
            Of(StoreJson.Default.Measurement, (e, m) => Text(e.Id, e.Unit, m.Component, m.Revision, m.Supersedes, m.Characteristic, m.Taken.Instrument))),
        new("finding", "finding", false, OfPart,
            Of(StoreJson.Default.Finding, (e, f) => Text(e.Id, e.Unit, f.Component, f.Revision, f.Supersedes))),
        new("trial", "trial", false, "r.id || '|' || r.unit || '|' || r.clearance || '|' || COALESCE(r.supersedes, '') || '|' || COALESCE(r.instrument, '')",
            Of(StoreJson.Default.TrialAssembly, (e, t) => Text(e.Id, e.Unit, t.Loop, t.Supersedes, t.Taken.Instrument))),
        new("decision", "decision", false, "r.id || '|' || r.unit || '|' || r.subject || '|' || COALESCE(r.supersedes, '')",
            Of(StoreJson.Default.Decision, (e, d) => Text(e.Id, e.Unit, d.Subject, d.Supersedes))),
        new("instrument", "instrument", true, "r.id || '|' || r.version",
            Of(StoreJson.Default.Instrument, (e, i) => Text(e.Id, i.Version))),
        new("judgement", "judgement", false, "r.id || '|' || r.unit || '|' || r.purpose || '|' || r.snapshot || '|' || r.judgement",
            Of(StoreJson.Default.JudgementKept, (e, j) => Text(e.Id, e.Unit, j.Purpose, j.SnapshotSha256, j.BodySha256))),
        OfShop(Rates.Table),
        OfShop(Part.Table),
        OfShop(StockItem.Table),
        OfShop(Reservation.Table),
        OfShop(KeptPlan.Table),
        OfShop(PlanChoice.Table),
        OfShop(Quote.Table),
        OfShop(Approval.Table),
        OfShop(InvoiceLine.Table),
        OfShop(Machining.Table),
        OfShop(WorkDone.Table),
        new("calibration", "calibration", false, "r.id || '|' || r.instrument",
            Of(StoreJson.Default.Calibration, (e, c) => Text(e.Id, c.Instrument))),
        new("study", "study", false, "r.id || '|' || r.instrument",
            Of(StoreJson.Default.GaugeStudyKept, (e, s) => Text(e.Id, s.Instrument))),
        new("comeback", "comeback", false, "r.id || '|' || r.unit || '|' || COALESCE(r.supersedes, '')",
            Of(StoreJson.Default.Comeback, (e, c) => Text(e.Id, e.Unit, c.Supersedes))),
        new("policy", "policy", false, "CAST(r.number AS TEXT)", Of(StoreJson.Default.PolicyEdition, (_, p) => Text(p.Number))),
        OfShop(TestDone.Table),
        OfShop(ConfirmedCauses.Table),
        OfShop(PriorUpdate.Table),
        OfShop(Webhook.Table),
        OfShop(StagePassing.Table),
        OfShop(SignOff.Table),
        OfShop(Attachment.Table),
        OfShop(PartLabel.Table),
        OfShop(PartRemoval.Table),
        OfShop(AccessToken.Table),
        OfShop(Erasure.Table),
        OfShop(Sharing.Table),
    ];

    private static IndexedTable OfShop<T>(ShopTable<T> table)
        where T : class, IShopRecord<T> => new(
            table.Name, table.Kind, table.IsEdited, "r.id || '|' || COALESCE(r.unit, '') || '|' || COALESCE(r.about, '') || '|' || r.version",
            Of(table.Shape, (e, t) => Text(e.Id, t.OfUnit, t.About, t.Version)));

    /// <summary>The entries that a row must point to, each with what its row says; empty when it has none.</summary>
    public string EntriesSql =>
        $"""
        SELECT e.sequence, e.unit, e.id, e.body, COALESCE({Says}, '') AS says FROM entry e
        LEFT JOIN {Name} r ON r.shop = e.shop AND {Same} AND r.entry = e.sequence
        WHERE e.shop = @shop AND e.kind = '{Kind}' {(Newest ? OnlyNewest : "")} ORDER BY e.sequence
        """;

    /// <summary>The first row that points to no entry of its kind.</summary>
    public string StrayRowSql =>
        $"""
        SELECT MIN(r.entry) FROM {Name} r
        WHERE r.shop = @shop AND NOT EXISTS (SELECT 1 FROM entry e WHERE e.shop = r.shop AND e.sequence = r.entry AND e.kind = '{Kind}')
        """;

    // By what the table's key begins with, so that the row is looked up and not searched for.
    private string Same => Name switch
    {
        "placement" => "r.unit = e.unit",
        "policy" => "r.number = CAST(e.id AS INTEGER)",
        _ => "r.id = e.id",
    };

    private static string OnlyNewest =>
        "AND e.sequence IN (SELECT MAX(sequence) FROM entry WHERE shop = @shop AND kind IN "
        + "('unit', 'instrument', 'placement', 'vacancy', 'rates', 'part', 'stock', 'reservation', 'machining', 'webhook', 'token', 'sharing') "
        + "GROUP BY unit, id, CASE kind WHEN 'vacancy' THEN 'placement' ELSE kind END)";

    private static Func<IndexedEntry, string> Of<T>(JsonTypeInfo<T> shape, Func<IndexedEntry, T, string> text) =>
        entry => text(entry, JsonSerializer.Deserialize(entry.Body, shape)!);

    private static string Text(params object?[] parts) => string.Join('|', parts.Select(p => Convert.ToString(p, CultureInfo.InvariantCulture)));
}

/// <summary>An entry beside what its row says. Filled by name: of an empty answer the engine does not know that the text is a text.</summary>
internal sealed record IndexedEntry
{
    public long Sequence { get; init; }

    public string Unit { get; init; } = "";

    public string Id { get; init; } = "";

    public string Body { get; init; } = "";

    /// <summary>What the row says; empty when there is no row.</summary>
    public string Says { get; init; } = "";
}
