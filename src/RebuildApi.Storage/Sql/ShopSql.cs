using RebuildApi.Storage.Sql.Personal;

namespace RebuildApi.Storage.Sql;

/// <summary>How a table of the shop's own records is asked. The name of the table is the only thing that differs.</summary>
internal sealed record ShopSql(string Table, bool HasPersonal = false)
{
    private string Bodies => $"SELECT e.sequence, t.version, e.body{(HasPersonal ? ", " + PersonalSql.Column : "")} FROM {Table} t LEFT JOIN entry e ON e.shop = t.shop AND e.sequence = t.entry{(HasPersonal ? PersonalSql.Join : "")} WHERE t.shop = @shop";

    public string One => Bodies + " AND t.id = @id";

    public string Many => Bodies + $" AND t.id > @after {Wanted} ORDER BY t.id LIMIT @limit";

    public string All => Bodies + $" {Wanted} ORDER BY t.entry";

    public string Newest => Bodies + $" {Wanted} ORDER BY t.entry DESC LIMIT 1";

    public string Newer => Bodies + " AND t.entry > @after ORDER BY t.entry LIMIT @limit";

    public string Version => $"SELECT version FROM {Table} WHERE shop = @shop AND id = @id";

    public string Insert => $"INSERT INTO {Table} (shop, id, unit, about, version, entry) VALUES (@shop, @id, @unit, @about, @version, @entry)";

    public string Update => $"UPDATE {Table} SET unit = @unit, about = @about, version = @version, entry = @entry WHERE shop = @shop AND id = @id";

    private static string Wanted => "AND (@unit IS NULL OR t.unit = @unit) AND (@about IS NULL OR t.about = @about)";
}
