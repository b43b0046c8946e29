using Npgsql;

namespace RebuildApi.TestKit;

/// <summary>
/// A schema of its own in the PostgreSQL database that <c>REBUILD_TEST_POSTGRES</c> names, gone at the end. The database belongs to the role of that connection,
/// which is a plain one; its server is a throw-away one that trusts <c>postgres</c> too, since a test that meddles needs more than the service has.
/// </summary>
public sealed class TempSchema : IDisposable
{
    private const string Switch = "REBUILD_TEST_POSTGRES";
    private readonly string _name = "t_" + Path.GetRandomFileName().Replace(".", "", StringComparison.Ordinal);

    public TempSchema() => Run(Server!, $"CREATE SCHEMA {_name}");

    /// <summary>The connection to the server that tests use; null when they use files.</summary>
    public static string? Server => Environment.GetEnvironmentVariable(Switch) is { Length: > 0 } text ? text : null;

    /// <summary>A schema when tests use a server; null when they use files.</summary>
    public static TempSchema? WhereAsked() => Server is null ? null : new TempSchema();

    /// <summary>The connection that a store is opened with; the server lists it under the name of the schema.</summary>
    public string Connection => With(Server!, b => (b.SearchPath, b.ApplicationName) = (_name, _name));

    /// <summary>A connection to the same schema that nothing holds back.</summary>
    public string Master => With(Connection, b => b.Username = "postgres");

    public void Dispose()
    {
        using (var pool = new NpgsqlConnection(Master))
            NpgsqlConnection.ClearPool(pool);
        Run(Master, $"DROP SCHEMA {_name} CASCADE");
    }

    private static string With(string connection, Action<NpgsqlConnectionStringBuilder> change)
    {
        var text = new NpgsqlConnectionStringBuilder(connection);
        change(text);
        return text.ToString();
    }

    private static void Run(string connection, string sql)
    {
        using var open = new NpgsqlConnection(With(connection, _ => { }));
        open.Open();
#pragma warning disable CA2100 // The only text that is not a constant is a name made above.
        using var command = new NpgsqlCommand(sql, open);
#pragma warning restore CA2100
        command.ExecuteNonQuery();
    }
}
