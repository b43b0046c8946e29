using RebuildApi.Storage.Postgres;
using RebuildApi.Storage.Sqlite;

namespace RebuildApi.Storage;

/// <summary>Opens a shop's records in whichever engine they are.</summary>
public static class Stores
{
    /// <summary>Opens them, makes what is missing, and brings it to the schema of this program.</summary>
    /// <exception cref="StorageUnavailableException">They must not or can't be opened; the code and the words say why.</exception>
    public static IStore Open(StoreOptions options) => options.Database is null ? SqliteStore.Open(options) : PostgresStore.Open(options);

    /// <summary>Holds a connection setting against what can be understood, without connecting.</summary>
    /// <exception cref="FormatException">It can't; the words name the key that is wrong.</exception>
    public static void CheckDatabase(string database) => PostgresAddress.Read(database);
}
