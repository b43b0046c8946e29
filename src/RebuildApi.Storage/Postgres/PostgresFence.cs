using Dapper;
using Npgsql;

namespace RebuildApi.Storage.Postgres;

/// <summary>
/// Row-level security: a table that has a shop shows and takes only rows of the shop that the connection named when it was opened, to its owner too. A
/// question that forgets to name the shop finds nothing of another one. It is raised over whatever tables there are, so that a new one can't be left out.
/// What another shop has opened may be seen besides (<see cref="PostgresOpening"/>).
/// </summary>
internal static class PostgresFence
{
    private const string Tables =
        """
        SELECT quote_ident(c.relname) FROM pg_class c JOIN pg_attribute a ON a.attrelid = c.oid
        WHERE c.relnamespace = current_schema()::regnamespace AND c.relkind = 'r' AND a.attname = 'shop' AND NOT a.attisdropped ORDER BY 1
        """;

    private const string Strong = "SELECT rolsuper OR rolbypassrls FROM pg_roles WHERE rolname = current_user";

    /// <summary>Lets the owner see all shops, for a step of the schema that rewrites rows; inside a transaction that ends with <see cref="Raise"/>.</summary>
    public static void Lower(NpgsqlConnection connection)
    {
        foreach (var table in connection.Query<string>(Tables).AsList())
            connection.Execute($"ALTER TABLE {table} NO FORCE ROW LEVEL SECURITY");
    }

    public static void Raise(NpgsqlConnection connection)
    {
        var tables = connection.Query<string>(Tables).AsList();
        foreach (var table in tables)
        {
            connection.Execute(
                $"""
                ALTER TABLE {table} ENABLE ROW LEVEL SECURITY;
                ALTER TABLE {table} FORCE ROW LEVEL SECURITY;
                DROP POLICY IF EXISTS own_shop ON {table};
                CREATE POLICY own_shop ON {table} USING (shop = current_setting('rebuild.shop', true))
                """);
        }

        PostgresOpening.Raise(connection, tables);
    }

    /// <summary>Refuses a role that no policy holds back.</summary>
    /// <exception cref="StorageUnavailableException"><c>role-too-strong</c>.</exception>
    public static void Require(NpgsqlConnection connection)
    {
        if (connection.ExecuteScalar<bool>(Strong))
        {
            throw new StorageUnavailableException(
                "role-too-strong",
                "The role that the service connects by may see past the rows of its shop (SUPERUSER or BYPASSRLS). Give it one of its own: CREATE ROLE rebuild LOGIN.");
        }
    }
}
