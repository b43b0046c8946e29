using System.Data.Common;
using System.Text.Json;
using Dapper;

namespace RebuildApi.Storage.Sql;

/// <summary>What is asked of the kept judgements.</summary>
internal sealed class JudgementQueries(DbConnection connection, string shop)
{
    private const string Whole =
        """
        SELECT e.body AS kept, s.body AS snapshot, b.body AS body FROM judgement j
        LEFT JOIN entry e ON e.shop = j.shop AND e.sequence = j.entry
        JOIN content s ON s.shop = j.shop AND s.sha256 = j.snapshot
        JOIN content b ON b.shop = j.shop AND b.sha256 = j.judgement

        """;

    private const string One = Whole + "WHERE j.shop = @shop AND j.id = @id";

    private const string Newest = Whole +
        "WHERE j.shop = @shop AND j.unit = @unit AND (@purpose IS NULL OR j.purpose = @purpose) ORDER BY j.id DESC LIMIT 1";

    private const string Many =
        """
        SELECT e.body FROM judgement j LEFT JOIN entry e ON e.shop = j.shop AND e.sequence = j.entry
        WHERE j.shop = @shop AND j.unit = @unit AND j.id > @after ORDER BY j.id LIMIT @limit
        """;

    public Judgement? Judgement(string id) => Read(connection.QuerySingleOrDefault<Row>(One, new { shop, id }));

    public Judgement? Latest(string unit, string? purpose) => Read(connection.QuerySingleOrDefault<Row>(Newest, new { shop, unit, purpose }));

    public Page<JudgementKept> Judgements(string unit, string? after, int limit)
    {
        limit = Cursor.Limit(limit);
        var rows = connection.Query<string>(Many, new { shop, unit, after = Cursor.After(after), limit = limit + 1 });
        return Cursor.Page(rows.Select(Kept), limit, j => j.Id);
    }

    private static Judgement? Read(Row? row) => row is null ? null : new Judgement(Kept(row.Kept), row.Snapshot, row.Body);

    private static JudgementKept Kept(string body) => JsonSerializer.Deserialize(body, StoreJson.Default.JudgementKept)!;

    private sealed record Row(string Kept, byte[] Snapshot, byte[] Body);
}
