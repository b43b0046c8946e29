using System.Collections.Immutable;
using System.Data.Common;
using Dapper;
using RebuildApi.Storage.Sql.Personal;

namespace RebuildApi.Storage.Sql;

/// <summary>The chain read as events.</summary>
internal static class EventQueries
{
    private const string After =
        "SELECT sequence, at, actor, kind, unit, id FROM entry WHERE shop = @shop AND sequence > @after ORDER BY sequence LIMIT @limit";

    private const string OfUnit =
        """
        SELECT e.sequence, e.at, e.actor, e.kind, e.unit, e.id, e.operation, e.body, e.hash, x.body AS personal FROM entry e
        LEFT JOIN personal x ON x.shop = e.shop AND x.sequence = e.sequence
        WHERE e.shop = @shop AND e.unit = @unit AND e.sequence > @after ORDER BY e.sequence LIMIT @limit
        """;

    public static ImmutableArray<StoreEvent> Events(DbConnection connection, string shop, long after, int limit) =>
        [.. connection.Query<Row>(After, new { shop, after, limit = Cursor.Limit(limit) }).Select(Event)];

    public static ImmutableArray<HistoryEntry> History(DbConnection connection, string shop, string unit, long after, int limit) =>
        [.. connection.Query<Row>(OfUnit, new { shop, unit, after, limit = Cursor.Limit(limit) })
            .Select(r => new HistoryEntry(Event(r), r.Operation, PersonalBody.Open(r.Kind, r.Body, r.Personal), r.Hash))];

    private static StoreEvent Event(Row r) => new(r.Sequence, Stamp.Read(r.At), r.Actor, r.Kind, r.Unit, r.Id);

    // Filled by name: events leave out what only the history asks for.
    private sealed record Row
    {
        public long Sequence { get; init; }

        public string At { get; init; } = "";

        public string Actor { get; init; } = "";

        public string Kind { get; init; } = "";

        public string Unit { get; init; } = "";

        public string Id { get; init; } = "";

        public string Operation { get; init; } = "";

        public string Body { get; init; } = "";

        public string Hash { get; init; } = "";

        public string? Personal { get; init; }
    }
}
