using System.Collections.Immutable;
using System.Data.Common;
using System.Text.Json;
using Dapper;
using RebuildApi.Storage.Sql.Personal;

namespace RebuildApi.Storage.Sql;

/// <summary>The chain read as an audit trail.</summary>
internal sealed class AuditQueries(DbConnection connection, string shop)
{
    private const string Many = "SELECT sequence, at, actor, operation, kind, unit, id, hash FROM entry WHERE shop = @shop AND sequence > @after";

    private const string One =
        """
        SELECT e.shop, e.sequence, e.at, e.actor, e.operation, e.kind, e.unit, e.id, e.body, e.previous, e.hash, e.form, x.body AS personal FROM entry e
        LEFT JOIN personal x ON x.shop = e.shop AND x.sequence = e.sequence
        WHERE e.shop = @shop AND e.sequence = @sequence
        """;

    // Acts belong to no unit: by that they are found without reading what does.
    private const string Newest = "SELECT body FROM entry WHERE shop = @shop AND unit = '' AND kind = @kind ORDER BY sequence DESC LIMIT 1";

    public ImmutableArray<AuditEntry> Entries(AuditFilter wanted, long after, int limit) =>
        [.. connection.Query<EntryRow>(Sql(wanted), new { shop, after, kind = wanted.Kind, unit = wanted.Unit, limit = Cursor.Limit(limit) }).Select(Entry)];

    private static string Sql(AuditFilter wanted) =>
        Many + (wanted.Kind is null ? "" : " AND kind = @kind") + (wanted.Unit is null ? "" : " AND unit = @unit") + " ORDER BY sequence LIMIT @limit";

    public AuditRecord? Entry(long sequence) =>
        connection.QuerySingleOrDefault<EntryRow>(One, new { shop, sequence }) is { } row ? new AuditRecord(Entry(row), row.Shop, row.At, row.Body, row.Previous, row.Form, PersonalBody.Read(row.Personal), PersonalBody.Open(row.Kind, row.Body, row.Personal)) : null;

    /// <summary>The act of one sort that was recorded last, or null.</summary>
    public Act? NewestAct(string kind) =>
        connection.QueryFirstOrDefault<string>(Newest, new { shop, kind }) is { } body ? JsonSerializer.Deserialize(body, StoreJson.Default.Act) : null;

    private static AuditEntry Entry(EntryRow row) =>
        new(new StoreEvent(row.Sequence, Stamp.Read(row.At), row.Actor, row.Kind, row.Unit, row.Id), row.Operation, row.Hash);
}
