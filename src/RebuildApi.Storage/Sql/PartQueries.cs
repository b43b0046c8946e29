using System.Data.Common;
using System.Text.Json;
using Dapper;

namespace RebuildApi.Storage.Sql;

/// <summary>What is asked of one part over all units.</summary>
internal sealed class PartQueries(DbConnection connection, string shop)
{
    private const string Revisions =
        """
        SELECT e.unit, e.at AS since, NULL AS until, e.body FROM component c LEFT JOIN entry e ON e.shop = c.shop AND e.sequence = c.entry
        WHERE c.shop = @shop AND c.id = @component ORDER BY c.revision
        """;

    // A place is left by whatever is recorded of it next.
    private const string Places =
        """
        SELECT e.unit, e.at AS since, e.body,
            (SELECT n.at FROM entry n WHERE n.shop = e.shop AND n.unit = e.unit AND n.sequence > e.sequence AND n.id = e.id AND n.kind IN ('placement', 'vacancy')
             ORDER BY n.sequence LIMIT 1) AS until
        FROM entry e WHERE e.shop = @shop AND e.kind = 'placement' AND json_extract(e.body, '$.component') = @component ORDER BY e.sequence
        """;

    /// <summary>Everything of a part, or null when there is none.</summary>
    public PartFile? Of(string component)
    {
        var revisions = Rows(Revisions, component);
        return revisions.Length == 0 ? null : new PartFile(
            [.. revisions.Select(r => new PartRevision(JsonSerializer.Deserialize(r.Body, StoreJson.Default.Component)!, r.Unit, Stamp.Read(r.Since)))],
            [.. Rows(Places, component).Select(r => new PartPlace(
                r.Unit, JsonSerializer.Deserialize(r.Body, StoreJson.Default.Placement)!, Stamp.Read(r.Since), r.Until is { } until ? Stamp.Read(until) : null))],
            new ShopQueries<PartRemoval>(connection, shop).All(null, component));
    }

    private Row[] Rows(string sql, string component) => [.. connection.Query<Row>(sql, new { shop, component })];

    // Filled by name.
    private sealed record Row
    {
        public string Unit { get; init; } = "";

        public string Since { get; init; } = "";

        public string? Until { get; init; }

        public string Body { get; init; } = "";
    }
}
