using System.Data.Common;
using System.Text.Json;
using Dapper;

namespace RebuildApi.Storage.Sql;

/// <summary>What is asked of the instruments.</summary>
internal sealed class InstrumentQueries(DbConnection connection, string shop)
{
    private const string One =
        """
        SELECT i.version, e.body FROM instrument i LEFT JOIN entry e ON e.shop = i.shop AND e.sequence = i.entry
        WHERE i.shop = @shop AND i.id = @id
        """;

    private const string Many =
        """
        SELECT i.version, e.body FROM instrument i LEFT JOIN entry e ON e.shop = i.shop AND e.sequence = i.entry
        WHERE i.shop = @shop AND i.id > @after ORDER BY i.id LIMIT @limit
        """;

    public Instrument? Instrument(string id)
    {
        var row = connection.QuerySingleOrDefault<VersionedBody>(One, new { shop, id });
        return row is null ? null : Read(row);
    }

    public Page<Instrument> Instruments(string? after, int limit)
    {
        limit = Cursor.Limit(limit);
        var rows = connection.Query<VersionedBody>(Many, new { shop, after = Cursor.After(after), limit = limit + 1 });
        return Cursor.Page(rows.Select(Read), limit, i => i.State.Id);
    }

    private static Instrument Read(VersionedBody row) =>
        JsonSerializer.Deserialize(row.Body, StoreJson.Default.Instrument)! with { Version = row.Version };
}
