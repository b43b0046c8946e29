using System.Collections.Immutable;
using Dapper;
using Npgsql;
using RebuildApi.Storage.Sql;

namespace RebuildApi.Storage.Postgres;

/// <summary>The tables of the schema that a connection works in.</summary>
internal sealed class PostgresCatalogue(NpgsqlConnection connection) : ICatalogue
{
    private const string TablesSql =
        """SELECT relname::text COLLATE "C" FROM pg_class WHERE relnamespace = current_schema()::regnamespace AND relkind = 'r' ORDER BY 1""";

    private const string ColumnsSql =
        """
        SELECT attname::text FROM pg_attribute WHERE attrelid = (SELECT oid FROM pg_class WHERE relnamespace = current_schema()::regnamespace AND relname = @table)
        AND attnum > 0 AND NOT attisdropped ORDER BY attnum
        """;

    private const string KeySql =
        """
        SELECT a.attname::text FROM pg_class t JOIN pg_index i ON i.indrelid = t.oid AND i.indisprimary
        CROSS JOIN LATERAL unnest(i.indkey) WITH ORDINALITY AS k (attnum, place) JOIN pg_attribute a ON a.attrelid = t.oid AND a.attnum = k.attnum
        WHERE t.relnamespace = current_schema()::regnamespace AND t.relname = @table ORDER BY k.place
        """;

    private const string PointsToSql =
        """
        SELECT DISTINCT r.relname::text FROM pg_constraint f JOIN pg_class t ON t.oid = f.conrelid JOIN pg_class r ON r.oid = f.confrelid
        WHERE f.contype = 'f' AND t.relnamespace = current_schema()::regnamespace AND t.relname = @table
        """;

    /// <summary>The schema that a connection works in.</summary>
    /// <exception cref="StorageUnavailableException">There is none, or the role may not use it.</exception>
    public static string SchemaOf(NpgsqlConnection connection) => connection.ExecuteScalar<string?>("SELECT current_schema()::text")
        ?? throw new StorageUnavailableException("unreachable", "The schema that the connection names (Search Path) is not there, or its role may not use it.");

    public ImmutableArray<string> Tables() => [.. connection.Query<string>(TablesSql)];

    public ImmutableArray<string> Columns(string table) => [.. connection.Query<string>(ColumnsSql, new { table })];

    public ImmutableArray<string> Key(string table) => [.. connection.Query<string>(KeySql, new { table })];

    public ImmutableArray<string> PointsTo(string table) => [.. connection.Query<string>(PointsToSql, new { table })];
}
