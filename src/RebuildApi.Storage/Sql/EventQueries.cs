using System.Collections.Immutable;
using System.Data.Common;
using Dapper;

namespace RebuildApi.Storage.Sql;

/// <summary>The chain read as events.</summary>
internal static class EventQueries
{
    private const string After =
        "SELECT sequence, at, actor, kind, unit, id FROM entry WHERE shop = @shop AND sequence > @after ORDER BY sequence LIMIT @limit";

    public static ImmutableArray<StoreEvent> Events(DbConnection connection, string shop, long after, int limit) =>
        [.. connection.Query<Row>(After, new { shop, after, limit = Cursor.Limit(limit) })
            .Select(r => new StoreEvent(r.Sequence, Stamp.Read(r.At), r.Actor, r.Kind, r.Unit, r.Id))];

    private sealed record Row(long Sequence, string At, string Actor, string Kind, string Unit, string Id);
}
