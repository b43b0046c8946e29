using System.Diagnostics.CodeAnalysis;
using System.Security.Cryptography;
using System.Text;
using System.Text.RegularExpressions;
using Npgsql;

namespace RebuildApi.TestKit;

/// <summary>
/// A schema of its own in the PostgreSQL database that <c>REBUILD_TEST_POSTGRES</c> names, gone at the end. The database belongs to the role of that connection,
/// which is a plain one; its server is a throw-away one that trusts <c>postgres</c> too, since a test that meddles needs more than the service has. That of a
/// folder is emptied at the end and kept for the next one: making fifty tables anew takes longer than most tests.
/// </summary>
public sealed partial class TempSchema : IDisposable
{
    private const string Switch = "REBUILD_TEST_POSTGRES";
    // One at a time takes a spare schema or makes one.
    private const string Key = "20130";

    private readonly string _name;
    private readonly bool _mayStay;

    public TempSchema()
        : this(Path.GetRandomFileName().Replace(".", "", StringComparison.Ordinal), mayStay: false)
    {
    }

    private TempSchema(string name, bool mayStay)
    {
        (_name, _mayStay) = ("t_" + name, mayStay);
        Run(Server!, mayStay ? Spare : $"CREATE SCHEMA {_name}");
    }

    /// <summary>The connection to the server that tests use; null when they use files.</summary>
    public static string? Server => Environment.GetEnvironmentVariable(Switch) is { Length: > 0 } text ? text : null;

    /// <summary>A schema when tests use a server; null when they use files.</summary>
    public static TempSchema? WhereAsked() => Server is null ? null : new TempSchema();

    /// <summary>The schema that belongs to a folder, the same one each time, when tests use a server; null when they use files.</summary>
    public static TempSchema? Of(DirectoryInfo folder) => Server is null
        ? null
        : new TempSchema(Convert.ToHexStringLower(SHA256.HashData(Encoding.UTF8.GetBytes(folder.FullName)))[..24], mayStay: true);

    /// <summary>The connection that a store is opened with; the server lists it under the name of the schema.</summary>
    public string Connection => With(Server!, b => (b.SearchPath, b.ApplicationName) = (_name, _name));

    /// <summary>A connection to the same schema that nothing holds back.</summary>
    public string Master => With(Connection, b => b.Username = "postgres");

    /// <summary>What a test says to the engine in the process, in the words of this one.</summary>
    public static string Translated(string sql) => BytesOf().Replace(
        Trigger().Replace(sql, "DROP TRIGGER $1$2_is_not_$3 ON $2")
            .Replace("PRAGMA foreign_keys = OFF", "SET session_replication_role = replica", StringComparison.Ordinal)
            .Replace("CAST('the secret' AS BLOB)", "convert_to('the secret', 'UTF8')", StringComparison.Ordinal),
        "'\\x$1'::bytea");

    /// <summary>Does something to the tables behind the service's back, in the words of the engine in the process.</summary>
    public void Meddle(string sql) => Run(Master, Translated(sql) + (Building().IsMatch(sql) ? $"; COMMENT ON SCHEMA {_name} IS 'rebuilt'" : ""));

    public void Dispose() => Run(Master, _mayStay ? Emptied : $"DROP SCHEMA IF EXISTS {_name} CASCADE");

    // Another server over the same folder may have it already.
    private string Spare =>
        $"""
        DO $do$ DECLARE spare TEXT; BEGIN
            PERFORM pg_advisory_xact_lock({Key});
            IF to_regnamespace('{_name}') IS NULL THEN
                SELECT nspname INTO spare FROM pg_namespace WHERE nspname LIKE 'spare\_%' LIMIT 1;
                IF spare IS NULL THEN CREATE SCHEMA {_name}; ELSE EXECUTE format('ALTER SCHEMA %I RENAME TO {_name}', spare); END IF;
            END IF;
        END $do$
        """;

    // One that a test rebuilt, or that nobody made tables in, goes.
    private string Emptied =>
        $"""
        SET session_replication_role = replica;
        DO $do$ DECLARE each TEXT; BEGIN
            PERFORM pg_advisory_xact_lock({Key});
            IF to_regclass('{_name}.migration') IS NULL OR obj_description(to_regnamespace('{_name}'), 'pg_namespace') = 'rebuilt' THEN
                DROP SCHEMA IF EXISTS {_name} CASCADE;
                RETURN;
            END IF;
            FOR each IN SELECT format('%s', c.oid::regclass) FROM pg_class c WHERE relnamespace = to_regnamespace('{_name}') AND relkind = 'r' AND relname <> 'migration' LOOP
                EXECUTE 'DELETE FROM ' || each;
            END LOOP;
            ALTER SCHEMA {_name} RENAME TO spare_{_name};
        END $do$
        """;

    [GeneratedRegex(@"\b(CREATE|ALTER|DROP)\b")]
    private static partial Regex Building();

    [GeneratedRegex(@"DROP TRIGGER (IF EXISTS )?(\w+?)_is_not_(changed|removed)")]
    private static partial Regex Trigger();

    [GeneratedRegex(@"X'([0-9A-F]*)'")]
    private static partial Regex BytesOf();

    private static string With(string connection, Action<NpgsqlConnectionStringBuilder> change)
    {
        var text = new NpgsqlConnectionStringBuilder(connection);
        change(text);
        return text.ToString();
    }

    [SuppressMessage("Security", "CA2100", Justification = "The only text that is not a constant is a name made above.")]
    private static void Run(string connection, string sql)
    {
        // Not pooled: a connection for each schema that ever was would wait for the next one that never comes.
        using var open = new NpgsqlConnection(With(connection, b => b.Pooling = false));
        open.Open();
        using var command = new NpgsqlCommand(sql, open);
        command.ExecuteNonQuery();
    }
}
