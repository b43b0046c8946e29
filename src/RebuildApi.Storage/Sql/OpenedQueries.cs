using System.Collections.Immutable;
using System.Data.Common;
using System.Text.Json;
using Dapper;

namespace RebuildApi.Storage.Sql;

/// <summary>
/// What may be asked of another shop that opened it. Texts that stand apart are not even joined, and bodies from before they stood apart (form 1) are left out.
/// </summary>
internal sealed class OpenedQueries(DbConnection connection, string shop)
{
    private const string ToOne = "SELECT about FROM sharing WHERE shop = @other AND id = @shop";

    private const string ToShop = "SELECT shop, about FROM sharing WHERE id = @shop AND shop <> @shop AND about IS NOT NULL ORDER BY shop";

    private const string Apart = "e.form >= 2";

    private const string Units =
        $"SELECT u.version, e.body FROM unit u JOIN entry e ON e.shop = u.shop AND e.sequence = u.entry WHERE u.shop = @shop AND {Apart} ";

    private const string OneUnit = Units + "AND u.id = @id";

    private const string ManyUnits = Units + "AND u.id > @after AND (@stage IS NULL OR u.stage = @stage) ORDER BY u.id LIMIT @limit";

    private const string Newest =
        $"""
        SELECT e.body AS kept, b.body AS body FROM judgement j
        JOIN entry e ON e.shop = j.shop AND e.sequence = j.entry JOIN content b ON b.shop = j.shop AND b.sha256 = j.judgement
        WHERE j.shop = @shop AND j.unit = @unit AND {Apart} ORDER BY j.id DESC LIMIT 1
        """;

    /// <summary>Every shop that opened something to one.</summary>
    public static ImmutableArray<OpenedShop> To(DbConnection connection, string shop) =>
        [.. connection.Query<(string Shop, string About)>(ToShop, new { shop }).Select(r => new OpenedShop(r.Shop, Sharing.Read(r.About)))];

    /// <summary>Whether another shop opened something to one.</summary>
    public static bool Opens(DbConnection connection, string other, Opening what, string shop) =>
        Sharing.Read(connection.QuerySingleOrDefault<string?>(ToOne, new { other, shop })).Contains(what);

    public OpenedStock Stock(string? about, string? after, int limit) => new(
        new ShopQueries<StockItem>(connection, shop).Page(null, about, after, limit), new ShopQueries<Reservation>(connection, shop).All(null, null));

    public Page<Unit> Page(string? after, int limit, string? stage)
    {
        limit = Cursor.Limit(limit);
        var rows = connection.Query<VersionedBody>(ManyUnits, new { shop, after = Cursor.After(after), stage, limit = limit + 1 });
        return Cursor.Page(rows.Select(Unnamed), limit, u => u.Id);
    }

    public OpenedUnit? Unit(string id) => connection.QuerySingleOrDefault<VersionedBody>(OneUnit, new { shop, id }) is { } row
        ? new OpenedUnit(Unnamed(row), Latest(id))
        : null;

    private OpenedJudgement? Latest(string unit) => connection.QuerySingleOrDefault<Row>(Newest, new { shop, unit }) is { } row
        ? new OpenedJudgement(JsonSerializer.Deserialize(row.Kept, StoreJson.Default.JudgementKept)!, row.Body)
        : null;

    private static Unit Unnamed(VersionedBody row)
    {
        var unit = JsonSerializer.Deserialize(row.Body, StoreJson.Default.Unit)!;
        return unit with { Version = row.Version, Stage = UnitStages.Today(unit.Stage), Customer = null, Words = null };
    }

    private sealed record Row(string Kept, byte[] Body);
}
