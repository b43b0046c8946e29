using System.Collections.Immutable;
using System.Data.Common;
using System.Text.Json;
using Dapper;
using RebuildApi.Storage.Sql.Personal;

namespace RebuildApi.Storage.Sql;

/// <summary>What is asked of the shop's own records of one sort.</summary>
internal sealed class ShopQueries<T>(DbConnection connection, string shop)
    where T : class, IShopRecord<T>
{
    private readonly ShopSql _sql = new(T.Table.Name, !PersonalFields.Of(T.Table.Kind).IsEmpty);

    public T? Find(string id) => Rows(_sql.One, new { shop, id }).Select(Read).SingleOrDefault();

    public Page<T> Page(string? unit, string? about, string? after, int limit)
    {
        limit = Cursor.Limit(limit);
        var rows = Rows(_sql.Many, new { shop, unit, about, after = Cursor.After(after), limit = limit + 1 });
        return Cursor.Page(rows.Select(Read), limit, t => t.Id);
    }

    public ImmutableArray<T> All(string? unit, string? about) => [.. Rows(_sql.All, new { shop, unit, about }).Select(Read)];

    public T? Newest(string? unit, string? about) => Rows(_sql.Newest, new { shop, unit, about }).Select(Read).SingleOrDefault();

    public ImmutableArray<Recorded<T>> Newer(long after, int limit) =>
        [.. Rows(_sql.Newer, new { shop, after, limit = Cursor.Limit(limit) }).Select(r => new Recorded<T>(r.Sequence, Read(r)))];

    private IEnumerable<Row> Rows(string sql, object values) => connection.Query<Row>(sql, values);

    private static T Read(Row row) => JsonSerializer.Deserialize(PersonalBody.Open(T.Table.Kind, row.Body, row.Personal), T.Table.Shape)!.At(row.Version);

    // Filled by name: most records have nothing that stands apart.
    private sealed record Row
    {
        public long Sequence { get; init; }

        public long Version { get; init; }

        public string Body { get; init; } = "";

        public string? Personal { get; init; }
    }
}
