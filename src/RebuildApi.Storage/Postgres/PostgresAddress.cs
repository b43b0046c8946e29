using System.Globalization;
using Npgsql;

namespace RebuildApi.Storage.Postgres;

/// <summary>
/// What every connection is opened with. The shop is said at once by the connection itself, so that no reading or writing can be made without one.
/// </summary>
internal static class PostgresAddress
{
    // A few for the writer, the listener and duties; the rest reads. Three copies stay well below what an engine admits as it comes.
    private const int MostConnections = 24;
    private const int MostStatements = 200;
    private const int SecondsToConnect = 5;
    private const int SecondsForStatement = 30;

    /// <summary>Whether a connection can be understood at all; the words say what is wrong with it.</summary>
    /// <exception cref="FormatException">It can't.</exception>
    public static NpgsqlConnectionStringBuilder Read(string database)
    {
        try
        {
            var read = new NpgsqlConnectionStringBuilder(database);
            return string.IsNullOrEmpty(read.Host) ? throw new FormatException("It names no Host.") : read;
        }
        catch (Exception e) when (e is ArgumentException or InvalidCastException or OverflowException)
        {
            throw new FormatException(e.Message, e);
        }
    }

    /// <summary>The connections of a store.</summary>
    public static NpgsqlDataSource Source(StoreOptions options) => NpgsqlDataSource.Create(Text(options, pooling: true));

    /// <summary>A connection of its own, such as one that listens or keeps a duty.</summary>
    public static NpgsqlConnection Own(StoreOptions options) => new(Text(options, pooling: false));

    private static string Text(StoreOptions options, bool pooling)
    {
        var text = Read(options.Database!);
        Default(text, "Timeout", SecondsToConnect);
        Default(text, "Maximum Pool Size", MostConnections);
        Default(text, "Keepalive", SecondsToConnect);
        Default(text, "Application Name", "rebuild-api");
        text.CommandTimeout = SecondsForStatement + SecondsToConnect;
        text.MaxAutoPrepare = MostStatements;
        text.AutoPrepareMinUsages = 2;
        text.Pooling = pooling;
        text.Enlist = false;
        text.Options = $"{text.Options} {Session(options)}".Trim();
        return text.ToString();
    }

    private static void Default(NpgsqlConnectionStringBuilder text, string name, object value)
    {
        if (!text.ContainsKey(name))
            text[name] = value;
    }

    // A commit is on the disk before it is acknowledged, whatever the server's own default; a copy that died lets go of the shop soon.
    private static string Session(StoreOptions options) => string.Create(
        CultureInfo.InvariantCulture,
        $"""
        -c rebuild.shop={Escaped(options.Shop)} -c synchronous_commit=on -c default_transaction_read_only={(options.ReadOnly ? "on" : "off")}
        -c statement_timeout={SecondsForStatement}s -c lock_timeout={Patience(options)}ms -c idle_in_transaction_session_timeout=60s
        -c tcp_keepalives_idle=10 -c tcp_keepalives_interval=5 -c tcp_keepalives_count=3
        """).ReplaceLineEndings(" ");

    // The file is tried five times; here one wait is as long.
    private static long Patience(StoreOptions options) => Math.Max(1, (long)(options.BusyTimeout * 5).TotalMilliseconds);

    private static string Escaped(string shop) =>
        shop.Replace(@"\", @"\\", StringComparison.Ordinal).Replace(" ", @"\ ", StringComparison.Ordinal);
}
