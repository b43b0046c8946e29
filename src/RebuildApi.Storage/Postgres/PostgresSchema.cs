using System.Collections.Immutable;
using Dapper;
using Npgsql;
using RebuildApi.Storage.Sql;

namespace RebuildApi.Storage.Postgres;

/// <summary>
/// Brings a database to the schema of this program: all missing steps in one transaction, one copy of the service at a time. There is no file to copy before:
/// make a dump with the engine's own <c>pg_dump</c> before a newer edition is started. A step that fails leaves everything as it was.
/// </summary>
internal sealed class PostgresSchema(NpgsqlConnection connection, TimeProvider time, ImmutableArray<Migration> steps)
{
    private const string Ledger =
        """CREATE TABLE migration (number BIGINT NOT NULL PRIMARY KEY, name TEXT COLLATE "C" NOT NULL, applied TEXT COLLATE "C" NOT NULL)""";

    /// <summary>Number of the last step that was applied; 0 for an empty schema.</summary>
    /// <exception cref="StorageUnavailableException">It holds something else.</exception>
    public static int NumberOf(NpgsqlConnection connection)
    {
        var tables = new PostgresCatalogue(connection).Tables();
        if (tables.IsEmpty)
            return 0;
        if (!tables.Contains("migration"))
            throw new StorageUnavailableException("not-ours", "The database holds the tables of another program. Name another one, or another schema (Search Path).");
        return (int)connection.ExecuteScalar<long>("SELECT COALESCE(MAX(number), 0) FROM migration");
    }

    /// <summary>Refuses what is newer than this program or can't be brought up to date, and applies what is missing.</summary>
    public void Prepare(bool readOnly)
    {
        var stands = NumberOf(connection);
        SchemaCheck.Require(stands, steps[^1].Number, readOnly, "Use the newer program, or restore the dump made before the upgrade.");
        if (stands < steps[^1].Number)
            Upgrade();
    }

    private void Upgrade()
    {
        using var transaction = connection.BeginTransaction();
        connection.Execute("SET LOCAL lock_timeout = 0; SET LOCAL statement_timeout = 0");
        connection.Execute("SELECT pg_advisory_xact_lock(@key)", new { key = ShopLock.Upgrading(PostgresCatalogue.SchemaOf(connection)) });
        // Another copy may have done it while this one waited.
        var stands = NumberOf(connection);
        if (stands == 0)
            connection.Execute(Ledger);
        PostgresFence.Lower(connection);
        foreach (var step in steps.Where(s => s.Number > stands))
            Apply(step);
        PostgresFence.Raise(connection);
        transaction.Commit();
    }

    private void Apply(Migration step)
    {
        connection.Execute(step.Sql);
        connection.Execute(
            "INSERT INTO migration (number, name, applied) VALUES (@Number, @Name, @applied)",
            new { step.Number, step.Name, applied = Stamp.Of(time.GetUtcNow()) });
    }
}
