using System.Collections.Immutable;
using System.Data.Common;
using Dapper;
using RebuildApi.Storage.Sql;

namespace RebuildApi.Storage.Sqlite;

/// <summary>The tables of a file.</summary>
internal sealed class SqliteCatalogue(DbConnection connection) : ICatalogue
{
    public ImmutableArray<string> Tables() =>
        [.. connection.Query<string>("SELECT name FROM sqlite_master WHERE type = 'table' AND name NOT LIKE 'sqlite_%' ORDER BY name")];

    public ImmutableArray<string> Columns(string table) =>
        [.. connection.Query<string>("SELECT name FROM pragma_table_info(@table) ORDER BY cid", new { table })];

    public ImmutableArray<string> Key(string table) =>
        [.. connection.Query<string>("SELECT name FROM pragma_table_info(@table) WHERE pk > 0 ORDER BY pk", new { table })];

    public ImmutableArray<string> PointsTo(string table) =>
        [.. connection.Query<string>("SELECT DISTINCT \"table\" FROM pragma_foreign_key_list(@table)", new { table })];
}
